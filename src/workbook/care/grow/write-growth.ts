import type { BatchSheet } from "../../batch/read/batch-sheets";
import { block, columnLetters, localAddress } from "../../grid/plan/addresses";
import { isClash } from "../../grid/read/second-look";
import { isLate, JustChanged, putBack, watch, type LookedAt } from "../../grid/write/change-ranges";
import { askInEmptyCell, needFunctions } from "../../grid/write/known-functions";
import { isAsTyped } from "../../grid/write/same-content";
import { extentOf, writeRowsBelow } from "../../grid/write/write-sheet";
import { writeSurely } from "../../grid/write/write-surely";
import type { Growth } from "./grown";

/**
 * Writes the new rows and what follows them: all of it or nothing. Names come first: if somebody else has just done the same, Excel
 * refuses before a cell is touched.
 *
 * @param printed the area that is printed, with the sheet's name; undefined where all of it is
 */
export async function writeGrowth(
  context: Excel.RequestContext,
  { sheetName }: BatchSheet,
  growth: Growth,
  printed: string | undefined,
): Promise<void> {
  const { plan, rows, followed } = growth;
  const sheet = () => context.workbook.worksheets.getItem(sheetName);
  const place = `rows ${rows.from} to ${rows.to} of “${sheetName}”`;
  if (needFunctions(plan.cells.map(({ content }) => content))) await askInEmptyCell(context, sheetName, `A${rows.from}`);
  const { lastColumn } = extentOf(plan);
  const area = `A${rows.from}:${columnLetters(lastColumn)}${rows.to}`;
  const looked: LookedAt[] = [
    { sheetName, range: area, before: Array.from({ length: rows.to - rows.from + 1 }, () => Array.from({ length: lastColumn }, () => "")) },
    ...followed.map(({ address, was }) => ({ sheetName, range: address, before: [[was]] })),
  ];
  await writeSurely({
    place,
    write: async () => {
      for (const { name, range } of plan.names) sheet().names.add(name, sheet().getRange(range));
      const watched = watch(context, looked);
      context.application.suspendApiCalculationUntilNextSync();
      writeRowsBelow(sheet(), plan, rows);
      for (const { address, content } of followed) sheet().getRange(address).formulas = [[content]];
      if (printed !== undefined) sheet().pageLayout.setPrintArea(longer(printed, block(plan.print.area).to.row));
      await context.sync();
      const late = watched.find(isLate);
      if (late) {
        await takeBack(context, sheetName, growth, printed, "names only");
        await putBack(context, place, watched);
        throw new JustChanged(late.sheetName, late.range);
      }
    },
    look: async (problem) => {
      if (isClash(problem)) return "half";
      const asked = [...plan.cells, ...followed].map(({ address, content }) => ({
        content,
        cell: sheet().getRange(address).load("formulas"),
      }));
      await context.sync();
      return asked.every(({ content, cell }) => isAsTyped(content, cell.formulas[0]?.[0] as string | number)) ? "everything" : "half";
    },
    takeBack: () => takeBack(context, sheetName, growth, printed),
  });
}

/** The printed area down to a row; its columns are the brewer's. */
function longer(printed: string, lastRow: number): string {
  const { from, to } = block(localAddress(printed));
  return `${columnLetters(from.column)}${from.row}:${columnLetters(to.column)}${Math.max(to.row, lastRow)}`;
}

/** Whoever finds one of our names standing for other cells was not quick enough: those names are somebody else's. */
async function takeBack(
  context: Excel.RequestContext,
  sheetName: string,
  { plan, rows, followed }: Growth,
  printed: string | undefined,
  what: "all" | "names only" = "all",
): Promise<void> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName);
  await context.sync();
  if (sheet.isNullObject) return;
  const names = plan.names.map(({ name, range }) => ({ range, item: sheet.names.getItemOrNullObject(name).load("formula") }));
  const cells = followed.map((one) => ({ ...one, cell: sheet.getRange(one.address).load("formulas") }));
  await context.sync();
  const isOurs = ({ range, item }: (typeof names)[number]): boolean =>
    !item.isNullObject && localAddress(String(item.formula).replace(/^=/, "")) === range;
  const ours = names.filter(isOurs);
  for (const { item } of ours) item.delete();
  if (what === "all" && ours.length > 0) {
    sheet.getRange(`${rows.from}:${rows.to}`).delete("Up");
    for (const { address, content, was, cell } of cells) {
      if (isAsTyped(content, cell.formulas[0]?.[0] as string | number)) sheet.getRange(address).formulas = [[was]];
    }
    if (printed !== undefined) sheet.pageLayout.setPrintArea(localAddress(printed));
  }
  await context.sync();
}
