/** How one of Excel's chart types is drawn in a file. */
export interface ChartKind {
  element: "lineChart" | "scatterChart" | "barChart" | "areaChart" | "pieChart" | "doughnutChart";
  markers?: boolean;
  lines?: boolean;
  smooth?: boolean;
  grouping?: "standard" | "clustered" | "stacked" | "percentStacked";
  horizontal?: boolean;
}

/** By the names of Excel.ChartType. The first of two that look alike in a file is the one given on reading. */
export const CHART_KINDS: Record<string, ChartKind> = {
  Line: { element: "lineChart", lines: true, markers: false, grouping: "standard" },
  LineMarkers: { element: "lineChart", lines: true, markers: true, grouping: "standard" },
  XYScatter: { element: "scatterChart", lines: false, markers: true },
  XYScatterLines: { element: "scatterChart", lines: true, markers: true },
  XYScatterLinesNoMarkers: { element: "scatterChart", lines: true, markers: false },
  XYScatterSmooth: { element: "scatterChart", lines: true, markers: true, smooth: true },
  XYScatterSmoothNoMarkers: { element: "scatterChart", lines: true, markers: false, smooth: true },
  ColumnClustered: { element: "barChart", grouping: "clustered", horizontal: false },
  ColumnStacked: { element: "barChart", grouping: "stacked", horizontal: false },
  ColumnStacked100: { element: "barChart", grouping: "percentStacked", horizontal: false },
  BarClustered: { element: "barChart", grouping: "clustered", horizontal: true },
  BarStacked: { element: "barChart", grouping: "stacked", horizontal: true },
  BarStacked100: { element: "barChart", grouping: "percentStacked", horizontal: true },
  Area: { element: "areaChart", grouping: "standard" },
  AreaStacked: { element: "areaChart", grouping: "stacked" },
  Pie: { element: "pieChart" },
  Doughnut: { element: "doughnutChart" },
};

/** An unknown type is drawn as lines. */
export const chartKind = (type: string): ChartKind => CHART_KINDS[type] ?? CHART_KINDS.Line!;

export const hasAxes = (kind: ChartKind): boolean => kind.element !== "pieChart" && kind.element !== "doughnutChart";

export function chartTypeOf(kind: ChartKind): string {
  const same = (other: ChartKind): boolean =>
    other.element === kind.element &&
    (["markers", "lines", "smooth", "grouping", "horizontal"] as const).every(
      (key) => other[key] === undefined || other[key] === (kind[key] ?? false),
    );
  return Object.entries(CHART_KINDS).find(([, one]) => same(one))?.[0] ?? "Line";
}
