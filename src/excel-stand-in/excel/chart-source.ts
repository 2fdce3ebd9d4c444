import type { SheetBlock } from "./cell-writer";
import type { Host } from "./host";
import type { CellBlock, ChartSeriesRecord } from "./sheet-extras";

/**
 * How Excel reads a block of cells as a chart: a first row of headings names the series, and a first column of texts (or
 * any first column, for a scatter chart) gives what goes along the bottom.
 */
export function sourceSeries(host: Host, source: SheetBlock, type: string, seriesBy: string): ChartSeriesRecord[] {
  const byRows = seriesBy === "Rows" || (seriesBy === "Auto" && source.columnCount > source.rowCount);
  const long = byRows ? source.columnCount : source.rowCount;
  const wide = byRows ? source.rowCount : source.columnCount;
  const value = (along: number, across: number) =>
    host.engine.spills.valueAt(
      host.unitId,
      source.sheetId,
      source.row + (byRows ? across : along),
      source.column + (byRows ? along : across),
    );
  const block = (along: number, across: number, length: number): CellBlock => ({
    sheetId: source.sheetId,
    row: source.row + (byRows ? across : along),
    column: source.column + (byRows ? along : across),
    rowCount: byRows ? 1 : length,
    columnCount: byRows ? length : 1,
  });
  const hasHeadings = long > 1 && typeof value(0, wide - 1) === "string";
  const first = hasHeadings ? 1 : 0;
  const hasCategories =
    wide > 1 && (type.startsWith("XYScatter") || typeof value(first, 0) === "string" || (hasHeadings && value(0, 0) === null));
  const series: ChartSeriesRecord[] = [];
  for (let across = hasCategories ? 1 : 0; across < wide; across++) {
    series.push({
      values: block(first, across, long - first),
      ...(hasCategories ? { xValues: block(first, 0, long - first) } : {}),
      ...(hasHeadings ? { name: String(value(0, across) ?? ""), nameFrom: block(0, across, 1) } : {}),
    });
  }
  return series;
}
