import * as Plot from "@observablehq/plot";
import type { ChartAxisRecord, ChartRecord } from "../../excel/sheet-extras";
import type { Point, Series } from "./chart-data";
import { axisSpan, axisText, isDateFormat, mapSpan, niceMarks, type Span } from "./scales";

/** Okabe and Ito's palette, the dark ones first: told apart with any kind of colour blindness. Shapes differ as well. */
const colors = ["#0072b2", "#d55e00", "#009e73", "#8a4f7d", "#1d1b16"];
const symbols = ["circle", "square", "triangle", "diamond", "star"] as const;

export interface Drawing { width: number; height: number }

/** One chart as a figure with its own SVG: title, key, lines with dots, titled axes. */
export function drawChart(chart: ChartRecord, allSeries: readonly Series[], { width, height }: Drawing): HTMLElement {
  const figure = document.createElement("figure");
  figure.className = "bench-chart";
  if (chart.title) figure.append(element("figcaption", chart.title));
  const withKey = chart.showLegend !== false && allSeries.length > 1;
  if (withKey) figure.append(key(allSeries));
  const series = allSeries.filter(({ points }) => points.length > 0);
  if (series.length === 0) figure.append(element("p", "Nothing to draw yet: the cells behind this chart hold no figures."));
  else figure.append(plot(chart, allSeries, { width, height: height - (chart.title ? 26 : 0) - (withKey ? 22 : 0) - 6 }));
  return figure;
}

function plot(chart: ChartRecord, series: readonly Series[], { width, height }: Drawing): SVGSVGElement | HTMLElement {
  const valuesOf = (secondary: boolean) => series.filter((one) => one.secondary === secondary).flatMap(({ points }) => points.map(({ y }) => y));
  const primaryOnly = valuesOf(true).length === 0;
  const secondaryOnly = valuesOf(false).length === 0;
  const main = axisSpan(valuesOf(secondaryOnly), chart.axes.value);
  const second: Span = primaryOnly || secondaryOnly ? main : axisSpan(valuesOf(true), {});
  const toMain = mapSpan(second, main);
  const numeric = series.every(({ points }) => points.every(({ x }) => typeof x === "number"));
  const xs = series.flatMap(({ points }) => points.map(({ x }) => x));
  const across = numeric ? axisSpan(xs as number[], chart.axes.category) : undefined;
  const lines = !/^XYScatter$/u.test(chart.type);
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
    x: across ? { type: "linear", domain: across } : { type: "point", domain: [...new Set(xs)], padding: 0.3 },
    y: { domain: main },
    marks: [
      Plot.gridY({ stroke: "#1d1b16", strokeOpacity: 0.14, ticks: niceMarks(main, 6) }),
      Plot.axisX({ label: chart.axes.category.title ?? null, labelAnchor: "center", labelArrow: "none", ...(across && numericMarks(across, chart.axes.category, width)) }),
      Plot.axisY({ label: chart.axes.value.title ?? null, labelAnchor: "center", labelArrow: "none", ticks: niceMarks(main, 6), tickFormat: axisText(chart.axes.value.numberFormat) }),
      ...(primaryOnly || secondaryOnly ? [] : [Plot.axisY(niceMarks(second, 6).map(toMain), {
        anchor: "right", label: null, tickFormat: (height: number) => axisText(undefined)(mapSpan(main, second)(height)),
      })]),
      ...series.flatMap((one, index) => marksOf(one, index, one.secondary && !secondaryOnly ? toMain : (y) => y, lines)),
    ],
  });
}

/** Days have no halves: a date stands below the axis once. */
function numericMarks(span: Span, { numberFormat }: ChartAxisRecord, width: number): Pick<Plot.AxisXOptions, "ticks" | "tickFormat"> {
  const marks = niceMarks(span, Math.max(2, Math.floor(width / 80)));
  return { ticks: isDateFormat(numberFormat) ? marks.filter(Number.isInteger) : marks, tickFormat: axisText(numberFormat) };
}

function marksOf({ points, color }: Series, index: number, toHeight: (y: number) => number, lines: boolean): Plot.Markish[] {
  const stroke = color ?? colors[index % colors.length]!;
  const place = { x: (point: Point) => point.x, y: (point: Point) => toHeight(point.y) };
  const dots = Plot.dot(points, { ...place, fill: stroke, stroke: "#fffdf7", r: 4, symbol: symbols[index % symbols.length]! });
  const dash = index % 2 === 0 ? {} : { strokeDasharray: "6 4" };
  return lines ? [Plot.line(points, { ...place, stroke, strokeWidth: 2, ...dash }), dots] : [dots];
}

function key(series: readonly Series[]): HTMLElement {
  const list = document.createElement("ul");
  series.forEach(({ name, color }, index) => {
    const item = element("li", name);
    item.style.setProperty("--series", color ?? colors[index % colors.length]!);
    item.dataset["symbol"] = symbols[index % symbols.length]!;
    list.append(item);
  });
  return list;
}

function describe(series: readonly Series[]): string {
  return series.map(({ name, points }) => `${name}: ${points.length} points${points.length > 0 ? `, from ${points[0]!.y} to ${points.at(-1)!.y}` : ""}`).join("; ");
}

function element(tag: "figcaption" | "li" | "p", words: string): HTMLElement {
  const made = document.createElement(tag);
  made.textContent = words;
  return made;
}
