import type { Engine } from "../../../excel-stand-in/engine/engine";
import type { CellScalar } from "../../../excel-stand-in/engine/spills";
import type { CellBlock, ChartRecord, ChartSeriesRecord } from "../../../excel-stand-in/excel/sheet-extras";
import { lookOf, type Look } from "./series-look";

export interface Point {
  x: number | string;
  y: number;
}

export interface Series {
  name: string;
  secondary: boolean;
  /** Left out of the key. */
  unlisted: boolean;
  look: Look;
  points: Point[];
}

/** The points of a chart as its cells stand now. Rows without a number are left out, as Excel does with blanks. */
export function chartSeries(engine: Engine, unitId: string, chart: ChartRecord): Series[] {
  const read = (block: CellBlock | undefined) => (block === undefined ? [] : cellsOf(engine, unitId, block));
  return chart.series.map((series, index) => ({
    name: nameOf(series, read) ?? `Series ${index + 1}`,
    secondary: series.secondary === true,
    unlisted: series.unlisted === true,
    look: lookOf(chart, series, index),
    points: pointsOf(read(series.xValues), read(series.values)),
  }));
}

function nameOf(series: ChartSeriesRecord, read: (block: CellBlock) => CellScalar[]): string | undefined {
  if (series.name !== undefined) return series.name;
  const words = series.nameFrom === undefined ? undefined : read(series.nameFrom)[0];
  return words === undefined || words === null ? undefined : String(words);
}

/** Without numbers below the axis the points are counted from 1, as Excel does. */
function pointsOf(xs: CellScalar[], ys: CellScalar[]): Point[] {
  const counted = xs.every((x) => x === null || x === "");
  return ys.flatMap((y, index) => {
    const x = counted ? index + 1 : xs[index];
    return typeof y === "number" && (typeof x === "number" || (typeof x === "string" && x !== "" && !x.startsWith("#"))) ? [{ x, y }] : [];
  });
}

function cellsOf(engine: Engine, unitId: string, { sheetId, row, column, rowCount, columnCount }: CellBlock): CellScalar[] {
  return Array.from({ length: rowCount * columnCount }, (_, index) =>
    engine.spills.valueAt(unitId, sheetId, row + Math.floor(index / columnCount), column + (index % columnCount)),
  );
}
