import type { NamedCells } from "../../grid/read/named-cells";
import type { BatchCell } from "../../batch/fields/cells";
import { chartFigures, fermentationChart, fermentationChartName as chartName } from "../../batch/sheet/fermentation-chart";
import { columnWidths } from "../../batch/sheet/plan";
import { unitWords } from "../../batch/unit-words";
import { address, block, columnLetters } from "../../grid/plan/addresses";
import { columnWidthPt } from "../../grid/plan/print-scale";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellPlan, ChartPlan, NamePlan } from "../../grid/plan/sheet-plan";
import { unitsOf } from "../../batch/read/batch-sheets";
import { contentMatrix } from "../../grid/write/write-sheet";
import { writeChart } from "../../grid/write/write-chart";
import { writeFormats } from "../../grid/write/write-formats";

/** Today's chart for an older sheet, with the figures beside the timeline that it is drawn from. */
export interface NewChart {
  readonly area: string;
  readonly cells: readonly CellPlan[];
  readonly names: readonly NamePlan[];
  readonly chart: ChartPlan;
  /** Whether nothing else stands in these columns, so that they may be as wide as in a new sheet. */
  readonly ownColumns: boolean;
}

/** Until the old one is gone. */
const workingName = `${chartName}, being drawn`;
/** What the figures are calculated from. */
const needed: readonly BatchCell[] = [
  "reading_times",
  "beer_temperatures",
  "gravities",
  "og",
  "og_reached",
  "fg_expected",
  "brewed_on",
  "start_time",
  "pitch_temperature",
  "ferment_from",
  "units",
];

/**
 * The chart that a new sheet would have at this one's readings; undefined where the sheet has it already, or has no chart
 * (somebody took it away), and the reason in words where the old one must stay.
 */
export function newChart(cells: NamedCells, chartNames: readonly string[]): NewChart | { readonly stays: string } | undefined {
  if (!chartNames.includes(chartName) || cells.has("curve")) return undefined;
  if (!needed.every((name) => cells.has(name))) return { stays: "a cell that today's chart is drawn from is gone" };
  const { from, to } = cells.area("reading_times");
  if (from.column !== 1 || cells.area("beer_temperatures").from.column !== 5 || cells.area("gravities").from.column !== 6)
    return { stays: "the columns of the readings were moved" };
  const b = new SheetBuilder();
  const [words, rows] = [unitWords(unitsOf(cells)), { heading: from.row - 1, first: from.row, last: to.row }];
  chartFigures(b, words, rows);
  const plan = b.build(cells.sheetName, [], { area: "A1", paper: "a4", breaksBeforeRow: [], footer: "" }, 0);
  const { cells: planned, names } = plan;
  const area = around([...planned.map((cell) => cell.address), ...names.map(({ range }) => range)]);
  if (!isFree(cells, area) || names.some(({ name }) => cells.has(name)))
    return { stays: `the cells ${area}, which today's chart is drawn from, are in use` };
  const { from: corner, to: end } = block(area);
  const ownColumns = ![...cells.filled()]
    .map((cell) => block(cell.address).from.column)
    .some((column) => column >= corner.column && column <= end.column);
  return { area, cells: planned, names, chart: fermentationChart(words, rows), ownColumns };
}

/** Names, figures and the chart itself, in front of the old one. Nothing of the old one is touched yet. */
export function drawBeside(sheet: Excel.Worksheet, { area, cells, names, chart }: NewChart): void {
  for (const { name, range } of names) sheet.names.add(name, sheet.getRange(range));
  sheet.getRange(area).formulas = contentMatrix(cells, block(area));
  writeChart(sheet, { ...chart, name: workingName });
}

/** The old chart gives way; nothing can bring it back. Where it has done so already nothing is left to do. */
export function swapCharts({ old, drawn }: BegunChart): void {
  if (drawn.isNullObject) return;
  if (!old.isNullObject) old.delete();
  drawn.name = chartName;
}

/** The looks of its figures. */
export function dressChart(sheet: Excel.Worksheet, { area, cells, ownColumns }: NewChart): void {
  writeFormats(sheet, { cells });
  if (!ownColumns) return;
  const { from, to } = block(area);
  for (let column = from.column; column <= to.column; column += 1) {
    const letters = columnLetters(column);
    sheet.getRange(`${letters}:${letters}`).format.columnWidth = columnWidthPt(columnWidths[column - 1] ?? 0);
  }
}

/** As far as it was drawn; the cells were empty before. */
export interface BegunChart {
  readonly old: Excel.Chart;
  readonly drawn: Excel.Chart;
}

export const begunChart = (sheet: Excel.Worksheet): BegunChart => ({
  old: sheet.charts.getItemOrNullObject(chartName),
  drawn: sheet.charts.getItemOrNullObject(workingName),
});

/** Queues the way back. */
export function undraw(sheet: Excel.Worksheet, { area }: NewChart, { drawn }: BegunChart): void {
  if (!drawn.isNullObject) drawn.delete();
  sheet.getRange(area).clear("Contents");
}

/** The smallest block around some cells. */
function around(ranges: readonly string[]): string {
  const blocks = ranges.map(block);
  const [top, left] = [Math.min(...blocks.map(({ from }) => from.row)), Math.min(...blocks.map(({ from }) => from.column))];
  const [bottom, right] = [Math.max(...blocks.map(({ to }) => to.row)), Math.max(...blocks.map(({ to }) => to.column))];
  return `${address(top, left)}:${address(bottom, right)}`;
}

/** Neither filled nor named: an empty cell with a name is somebody's all the same. */
function isFree(cells: NamedCells, area: string): boolean {
  const { from, to } = block(area);
  const meets = (other: ReturnType<typeof block>): boolean =>
    other.from.row <= to.row && other.to.row >= from.row && other.from.column <= to.column && other.to.column >= from.column;
  return !cells.names().some((name) => meets(cells.area(name))) && ![...cells.filled()].some((cell) => meets(block(cell.address)));
}
