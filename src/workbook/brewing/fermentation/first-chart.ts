import { fermentationChart, fermentationChartName } from "../../batch/sheet/fermentation-chart";
import { isBatchSheet, isNewer, readSheet, unitsOf } from "../../batch/read/batch-sheets";
import { unitWords } from "../../batch/unit-words";
import { block, type Block } from "../../grid/plan/addresses";
import type { NamedCells } from "../../grid/read/named-cells";
import { writeChart } from "../../grid/write/write-chart";

/**
 * Readings stand in the second column, below all that goes into the beer and the brew day, in every plan that there was: whatever is typed
 * elsewhere is no reading, and costs no question to the workbook.
 */
const readingColumn = 2;
const highestRow = 50;

/**
 * Draws the chart beside the readings once the first of them are there, whoever wrote them: by hand, by the pane, from a file. A chart that
 * somebody has taken away stays away, since the readings that stood there before are not among the cells that have just changed.
 *
 * @param cells what has just changed
 */
async function chartOfFirstReadings(context: Excel.RequestContext, worksheetId: string, cells: Block): Promise<void> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(worksheetId);
  sheet.load("name");
  await context.sync();
  if (sheet.isNullObject) return;
  const [mark, figures] = ["readings", "curve"].map((name) => sheet.names.getItemOrNullObject(name));
  const charts = sheet.charts.load("items/name");
  await context.sync();
  if (!mark || mark.isNullObject || !figures || figures.isNullObject || charts.items.some(({ name }) => name === fermentationChartName))
    return;
  const read = await readSheet(context, sheet.name);
  if (!read || !isBatchSheet(read) || isNewer(read) || !areTheFirst(read, cells)) return;
  const { from, to } = read.area("readings");
  writeChart(sheet, fermentationChart(unitWords(unitsOf(read)), { heading: from.row - 1, first: from.row, last: to.row }));
  await context.sync();
}

/** Every reading that there is stands in a row that has just changed. */
function areTheFirst(sheet: NamedCells, { from, to }: Block): boolean {
  const area = sheet.area("readings");
  const rows = Array.from({ length: area.to.row - area.from.row + 1 }, (_, index) => area.from.row + index).filter(
    (row) => typeof sheet.at(row, area.from.column) === "number",
  );
  return rows.length > 0 && rows.every((row) => row >= from.row && row <= to.row);
}

/** The cells, where a reading may be among them. Several blocks at once, whole rows and columns are no readings that somebody types. */
function mayBeReadings(address: string): Block | undefined {
  const cells = /^[A-Z]+[0-9]+(:[A-Z]+[0-9]+)?$/.test(address) ? block(address) : undefined;
  return cells && cells.to.row >= highestRow && cells.from.column <= readingColumn && cells.to.column >= readingColumn ? cells : undefined;
}

/** Watches every sheet of the workbook. An Excel without such events draws no chart by itself. */
export async function followFirstReadings(run: (work: (context: Excel.RequestContext) => Promise<void>) => Promise<void>): Promise<void> {
  if (!Office.context.requirements.isSetSupported("ExcelApi", "1.9")) return;
  await run(async (context) => {
    context.workbook.worksheets.onChanged.add(async ({ worksheetId, address }) => {
      const cells = mayBeReadings(address);
      // It is an ornament: where it cannot be drawn, nothing of the brewer's is lost.
      if (cells) await run((later) => chartOfFirstReadings(later, worksheetId, cells)).catch(() => undefined);
    });
    await context.sync();
  });
}
