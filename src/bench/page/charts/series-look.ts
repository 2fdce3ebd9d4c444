import type { ChartRecord, ChartSeriesRecord } from "../../../excel-stand-in/excel/sheet-extras";

/** How one series is drawn. `symbol` and `dash` tell series apart where colour cannot. */
export interface Look {
  color: string;
  column: boolean;
  line: boolean;
  /** Pattern of strokes and gaps in pixels; undefined for an unbroken line. */
  dash: string | undefined;
  lineWidth: number;
  symbol: Symbol | undefined;
  radius: number;
}

export type Symbol = "circle" | "square" | "triangle" | "diamond" | "star" | "times" | "plus";

/** Okabe and Ito's palette, the dark ones first: told apart with any kind of colour blindness. Shapes differ as well. */
const colors = ["#0072b2", "#d55e00", "#009e73", "#8a4f7d", "#1d1b16"];
const symbols: readonly Symbol[] = ["circle", "square", "triangle", "diamond", "star"];

const dashes: Readonly<Record<string, string | undefined>> = {
  Dash: "6 4",
  DashDot: "6 3 1 3",
  DashDotDot: "6 3 1 3 1 3",
  Dot: "3 3",
  RoundDot: "1 4",
};
const markers: Readonly<Record<string, Symbol>> = {
  Circle: "circle",
  Dot: "circle",
  Square: "square",
  Triangle: "triangle",
  Diamond: "diamond",
  Star: "star",
  X: "times",
  Plus: "plus",
};
const pixelsPerPoint = 4 / 3;

/** As the series itself says, and otherwise one of a kind for its place in the chart. */
export function lookOf(chart: ChartRecord, series: ChartSeriesRecord, index: number): Look {
  const type = series.type ?? chart.type;
  const marked = !/NoMarkers$|^Line$/u.test(type) && series.markerStyle !== "None";
  // Where one series says what its line is like, one that does not means an unbroken line: a file says nothing of those.
  const given = chart.series.some(({ lineStyle }) => lineStyle !== undefined);
  return {
    color: series.color ?? colors[index % colors.length]!,
    column: type.startsWith("Column"),
    line: type !== "XYScatter",
    dash: given ? dashes[series.lineStyle ?? ""] : index % 2 === 0 ? undefined : "6 4",
    lineWidth: (series.lineWeight ?? 1.5) * pixelsPerPoint,
    symbol: marked ? (markers[series.markerStyle ?? ""] ?? symbols[index % symbols.length]!) : undefined,
    radius: ((series.markerSize ?? 6) * pixelsPerPoint) / 2,
  };
}
