import * as Plot from "@observablehq/plot";
import type { ChartAxisRecord, ChartRecord } from "../../../excel-stand-in/excel/sheet-extras";
import type { Point, Series } from "./chart-data";
import { keyOf } from "./key";
import { axisSpan, axisText, isDateFormat, mapSpan, niceMarks, type Span } from "./scales";

export interface Drawing {
  width: number;
  height: number;
}

/** Two different points on one axis at least, or one column above the ground: else there is nothing to see but axes. */
const isEmpty = (series: readonly Series[]): boolean =>
  [true, false].every((axis) => {
    const own = series.filter(({ secondary }) => secondary === axis);
    const [columns, others] = [own.filter(({ look }) => look.column), own.filter(({ look }) => !look.column)];
    const places = new Set(others.flatMap(({ points }) => points.map(({ x, y }) => `${x} ${y}`)));
    return places.size < 2 && columns.every(({ points }) => points.every(({ y }) => y === 0));
  });

/** One chart as a figure with its own SVG: title, key, lines with dots, titled axes. An empty one is not drawn. */
export function drawChart(chart: ChartRecord, allSeries: readonly Series[], { width, height }: Drawing): HTMLElement {
  const figure = document.createElement("figure");
  figure.className = "bench-chart";
  if (isEmpty(allSeries)) {
    figure.hidden = true;
    return figure;
  }
  if (chart.title) figure.append(element("figcaption", chart.title));
  const withKey = chart.showLegend !== false && allSeries.length > 1;
  if (withKey) figure.append(keyOf(allSeries));
  figure.append(
    plot(chart, allSeries, {
      width,
      height:
        height - (chart.title ? 22 * titleLines(chart.title, width) + 4 : 0) - (withKey ? 20 * keyLines(allSeries, width) + 2 : 0) - 6,
    }),
  );
  return figure;
}

function plot(chart: ChartRecord, series: readonly Series[], { width, height }: Drawing): SVGSVGElement | HTMLElement {
  const valuesOf = (secondary: boolean) =>
    series.filter((one) => one.secondary === secondary).flatMap(({ points }) => points.map(({ y }) => y));
  const primaryOnly = valuesOf(true).length === 0;
  const secondaryOnly = valuesOf(false).length === 0;
  const columns = series.some(({ look }) => look.column);
  // Columns stand on the ground, or their heights would lie.
  const main = axisSpan([...valuesOf(secondaryOnly), ...(columns ? [0] : [])], chart.axes.value);
  const secondAxis = chart.axes.secondary ?? {};
  const second: Span = primaryOnly || secondaryOnly ? main : axisSpan(valuesOf(true), secondAxis);
  const toMain = mapSpan(second, main);
  const numeric = !columns && series.every(({ points }) => points.every(({ x }) => typeof x === "number"));
  const xs = series.flatMap(({ points }) => points.map(({ x }) => x));
  const across = numeric ? axisSpan(xs as number[], chart.axes.category) : undefined;
  return Plot.plot({
    width,
    height,
    marginLeft: 54,
    marginRight: primaryOnly || secondaryOnly ? 18 : 54,
    marginTop: 12,
    marginBottom: 38,
    style: { background: "none", color: "#1d1b16", fontSize: "12px", fontFamily: "inherit" },
    ariaLabel: chart.title ?? chart.name,
    ariaDescription: describe(series),
    x: across
      ? { type: "linear", domain: across }
      : columns
        ? { type: "band", domain: [...new Set(xs)], padding: 0.3 }
        : { type: "point", domain: [...new Set(xs)], padding: 0.3 },
    y: { domain: main },
    marks: [
      Plot.gridY({ stroke: "#1d1b16", strokeOpacity: 0.14, ticks: niceMarks(main, 6) }),
      Plot.axisX({
        label: chart.axes.category.title ?? null,
        labelAnchor: "center",
        labelArrow: "none",
        ...(across ? numericMarks(across, chart.axes.category, width) : { ticks: wordMarks(xs, width) }),
      }),
      Plot.axisY({
        label: chart.axes.value.title ?? null,
        labelAnchor: "center",
        labelArrow: "none",
        ticks: valueMarks(main, chart.axes.value),
        tickFormat: axisText(chart.axes.value.numberFormat),
      }),
      ...(primaryOnly || secondaryOnly
        ? []
        : [
            Plot.axisY(valueMarks(second, secondAxis).map(toMain), {
              anchor: "right",
              label: secondAxis.title ?? null,
              labelAnchor: "center",
              labelArrow: "none",
              tickFormat: (height: number) => axisText(secondAxis.numberFormat)(mapSpan(main, second)(height)),
            }),
          ]),
      ...series.flatMap((one) => marksOf(one, one.secondary && !secondaryOnly ? toMain : (y) => y)),
    ],
  });
}

/** Figures that are shown whole are marked at whole numbers only, or two marks would read alike. */
function valueMarks(span: Span, { numberFormat }: ChartAxisRecord): number[] {
  const marks = niceMarks(span, 6);
  return numberFormat === "0" ? marks.filter(Number.isInteger) : marks;
}

/** Every word below the axis, or every second, third ...: as many as stand side by side. */
function wordMarks(xs: readonly (number | string)[], width: number): (number | string)[] {
  const words = [...new Set(xs)];
  const longest = Math.max(...words.map((word) => String(word).length));
  const step = Math.ceil((words.length * (longest * 7 + 8)) / Math.max(1, width - 72));
  return words.filter((_, index) => index % step === 0);
}

/** Days have no halves: a date stands below the axis once. */
function numericMarks(span: Span, { numberFormat }: ChartAxisRecord, width: number): Pick<Plot.AxisXOptions, "ticks" | "tickFormat"> {
  // The words of two marks keep apart: a figure of 12 pixels is 7 wide, and beside the plot stand the words of the heights.
  const words = axisText(numberFormat)(span[0]).length * 7 + 14;
  const marks = niceMarks(span, Math.max(1, Math.floor((width - 108) / Math.max(words, 70))));
  return { ticks: isDateFormat(numberFormat) ? marks.filter(Number.isInteger) : marks, tickFormat: axisText(numberFormat) };
}

function marksOf({ points, look }: Series, toHeight: (y: number) => number): Plot.Markish[] {
  const place = { x: (point: Point) => point.x, y: (point: Point) => toHeight(point.y) };
  if (look.column) return [Plot.barY(points, { ...place, fill: look.color })];
  const line = Plot.line(points, {
    ...place,
    stroke: look.color,
    strokeWidth: look.lineWidth,
    ...(look.dash && { strokeDasharray: look.dash, strokeLinecap: "round" as const }),
  });
  const dots = look.symbol && Plot.dot(points, { ...place, fill: look.color, stroke: "#fffdf7", r: look.radius, symbol: look.symbol });
  return [...(look.line ? [line] : []), ...(dots ? [dots] : [])];
}

/** How many lines the title will take: bold letters of 14 pixels are about 7.5 wide. */
const titleLines = (title: string, width: number): number => Math.max(1, Math.ceil((title.length * 7.5) / (width - 20)));

/** How many lines the key will take: letters of 12 pixels are about 6 wide, and each entry has its sample. */
function keyLines(series: readonly Series[], width: number): number {
  const room = series.filter(({ unlisted }) => !unlisted).reduce((sum, { name }) => sum + 48 + name.length * 6.2, 0);
  return Math.max(1, Math.ceil(room / (width - 20)));
}

function describe(series: readonly Series[]): string {
  return series
    .map(
      ({ name, points }) => `${name}: ${points.length} points${points.length > 0 ? `, from ${points[0]!.y} to ${points.at(-1)!.y}` : ""}`,
    )
    .join("; ");
}

function element(tag: "figcaption", words: string): HTMLElement {
  const made = document.createElement(tag);
  made.textContent = words;
  return made;
}
