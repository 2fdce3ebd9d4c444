import { planVersion } from "../../batch/describe/plan-version";
import { batchMark } from "../../batch/read/batch-sheets";
import { rectangles } from "../../grid/plan/areas";
import { isClash } from "../../grid/read/second-look";
import { isLate, JustChanged, putBack, watch } from "../../grid/write/change-ranges";
import { askInEmptyCell } from "../../grid/write/known-functions";
import { isAsTyped } from "../../grid/write/same-content";
import { writeFormats } from "../../grid/write/write-formats";
import { writeSurely, type Standing } from "../../grid/write/write-surely";
import { isNew, type Work } from "./work";
import { begunChart, drawBeside, dressChart, swapCharts } from "./new-chart";
import { takeBack } from "./take-back";

/**
 * Writes what was planned for the sheets: first all that can be taken back, on every sheet, with the number of the plan last;
 * then what only shows, and the old charts, which cannot be brought back.
 */
export async function bringAlong(context: Excel.RequestContext, work: readonly Work[]): Promise<void> {
  const place = work.map(({ outlook }) => `“${outlook.sheetName}”`).join(", ");
  const [empty] = work.flatMap(({ outlook, fresh }) =>
    fresh.cells.filter(({ was }) => was === "").map(({ address }) => ({ ...outlook, address })),
  );
  if (empty) await askInEmptyCell(context, empty.sheetName, empty.address);
  await writeSurely({
    place,
    write: async () => {
      for (const one of work) addNames(sheetOf(context, one), one);
      const watched = watch(
        context,
        work.flatMap(({ outlook, fresh }) =>
          fresh.cells.map(({ address, was }) => ({ sheetName: outlook.sheetName, range: address, before: [[was]] })),
        ),
      );
      context.application.suspendApiCalculationUntilNextSync();
      for (const one of work) write(sheetOf(context, one), one);
      await context.sync();
      const late = watched.find(isLate);
      if (late) {
        await putBack(context, place, watched);
        throw new JustChanged(late.sheetName, late.range, false);
      }
    },
    look: async (problem) => (isClash(problem) ? "half" : await standingOf(context, work)),
    takeBack: () => takeBack(context, work),
  });
  await writeSurely({
    place,
    write: () => finish(context, work),
    look: async () => {
      const charts = work.filter(({ chart }) => isNew(chart)).map((one) => begunChart(sheetOf(context, one)));
      await context.sync();
      if (charts.length > 0 && charts.every(({ old, drawn }) => !old.isNullObject && !drawn.isNullObject)) return "half";
      // An old chart is gone, or there was none: then on.
      await finish(context, work);
      return "everything";
    },
    takeBack: () => takeBack(context, work),
  });
}

const sheetOf = (context: Excel.RequestContext, { outlook }: Work): Excel.Worksheet =>
  context.workbook.worksheets.getItem(outlook.sheetName);

/** Names come first: if somebody else has just done the same, Excel refuses before a cell is touched. */
function addNames(sheet: Excel.Worksheet, { fresh }: Work): void {
  for (const { name, cell } of fresh.names) sheet.names.add(name, sheet.getRange(cell));
}

/** The version comes after all that it promises. */
function write(sheet: Excel.Worksheet, { fresh, chart, cells }: Work): void {
  for (const { address, content } of fresh.cells) sheet.getRange(address).formulas = [[content]];
  if (isNew(chart)) drawBeside(sheet, chart);
  sheet.getRange(cells.range(batchMark)).values = [[planVersion]];
}

async function standingOf(context: Excel.RequestContext, work: readonly Work[]): Promise<Standing> {
  const asked = work.flatMap((one) => {
    const sheet = sheetOf(context, one);
    return [
      { cell: sheet.getRange(one.cells.range(batchMark)).load("formulas"), content: planVersion },
      ...one.fresh.cells.map(({ address, content }) => ({ cell: sheet.getRange(address).load("formulas"), content })),
    ];
  });
  await context.sync();
  return asked.every(({ cell, content }) => isAsTyped(content, cell.formulas[0]?.[0] as string | number)) ? "everything" : "half";
}

/** May be done twice. The old charts go first: what only shows can always be done later. */
async function finish(context: Excel.RequestContext, work: readonly Work[]): Promise<void> {
  const begun = work.map((one) => begunChart(sheetOf(context, one)));
  await context.sync();
  work.forEach((one, index) => {
    if (isNew(one.chart)) swapCharts(begun[index]!);
  });
  for (const one of work) {
    const sheet = sheetOf(context, one);
    for (const range of one.fresh.freed) sheet.getRange(range).dataValidation.clear();
    // A cell that was empty gets its look; others keep theirs.
    const dressed = one.fresh.cells.filter(({ was }) => was === "").map(({ mergeTo: _, ...cell }) => cell);
    if (rectangles(dressed.map(({ address }) => address)).length > 0) writeFormats(sheet, { cells: dressed });
    if (isNew(one.chart)) dressChart(sheet, one.chart);
  }
  await context.sync();
}
