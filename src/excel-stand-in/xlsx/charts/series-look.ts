import type { ChartSeriesRecord } from "../../excel/sheet-extras";
import { colorToFile } from "../colors";
import { childrenOf, descend, type XmlElement } from "../xml";
import { chartKind, type ChartKind } from "./chart-kinds";
import { valueXml } from "./chart-text";

const UNITS_PER_POINT = 12_700;
const USUAL_WEIGHT = 1.5;
const USUAL_MARK = { style: "Circle", size: 5 };

/** Excel.ChartLineStyle and its name in a file (ECMA-376 part 1, 20.1.10.48). */
const DASHES: Readonly<Record<string, string>> = {
  Dash: "dash",
  DashDot: "dashDot",
  DashDotDot: "sysDashDotDot",
  Dot: "sysDash",
  RoundDot: "sysDot",
};
const MARKS = ["Circle", "Square", "Diamond", "Triangle", "X", "Star", "Dot", "Dash", "Plus"];

/** Line, fill and markers of a series, in the order the format asks for. A series may have a type of its own. */
export function seriesLookXml(series: ChartSeriesRecord, chart: ChartKind): string {
  const color = colorToFile(series.color);
  const fill = color ? `<a:solidFill><a:srgbClr val="${color}"/></a:solidFill>` : "";
  if (chart.element !== "lineChart" && chart.element !== "scatterChart") return fill ? `<c:spPr>${fill}</c:spPr>` : "";
  const { lines, markers } = series.type === undefined ? chart : chartKind(series.type);
  const dash = DASHES[series.lineStyle ?? ""];
  const line =
    `<a:ln w="${(series.lineWeight ?? USUAL_WEIGHT) * UNITS_PER_POINT}"` +
    (lines ? ` cap="rnd">${fill}${dash ? `<a:prstDash val="${dash}"/>` : ""}</a:ln>` : "><a:noFill/></a:ln>");
  const style = series.markerStyle === undefined || !MARKS.includes(series.markerStyle) ? USUAL_MARK.style : series.markerStyle;
  const marker =
    markers && series.markerStyle !== "None"
      ? valueXml("symbol", style.toLowerCase()) +
        valueXml("size", series.markerSize ?? USUAL_MARK.size) +
        (fill ? `<c:spPr>${fill}<a:ln>${fill}</a:ln></c:spPr>` : "")
      : valueXml("symbol", "none");
  return `<c:spPr>${line}</c:spPr><c:marker>${marker}</c:marker>`;
}

/** What of a series' look in a file is not the usual one. */
export function seriesLook(series: XmlElement): Pick<ChartSeriesRecord, "lineStyle" | "lineWeight" | "markerStyle" | "markerSize"> {
  const line = descend(series, "spPr", "ln");
  const dash = childrenOf(line, "prstDash")[0]?.attributes.val;
  const lineStyle = Object.entries(DASHES).find(([, name]) => name === dash)?.[0];
  const weight = Number(line?.attributes.w ?? Number.NaN) / UNITS_PER_POINT;
  const marker = descend(series, "marker");
  const mark = (name: string): string | undefined => childrenOf(marker, name)[0]?.attributes.val;
  const markerStyle = MARKS.find((style) => style.toLowerCase() === mark("symbol"));
  const size = Number(mark("size") ?? Number.NaN);
  return {
    ...(lineStyle ? { lineStyle } : {}),
    ...(Number.isFinite(weight) && weight !== USUAL_WEIGHT ? { lineWeight: weight } : {}),
    ...(markerStyle && markerStyle !== USUAL_MARK.style ? { markerStyle } : {}),
    ...(Number.isFinite(size) && size !== USUAL_MARK.size ? { markerSize: size } : {}),
  };
}
