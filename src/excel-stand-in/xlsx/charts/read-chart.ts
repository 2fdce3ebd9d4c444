import type { CellBlock, ChartAxisRecord, ChartRecord, ChartSeriesRecord } from "../../excel/sheet-extras";
import { parseBlock, splitSheet } from "../addresses";
import { childrenOf, deepText, descend, findDeep, localName, type XmlElement } from "../xml";
import { chartTypeOf, type ChartKind } from "./chart-kinds";
import { seriesLook } from "./series-look";

const LEGEND_PLACES: Record<string, string> = { t: "Top", b: "Bottom", l: "Left", r: "Right", tr: "Corner" };
const ELEMENTS = ["lineChart", "scatterChart", "barChart", "areaChart", "pieChart", "doughnutChart"] as const;
type SheetIdOf = (sheetName: string) => string | undefined;

/** What the grid can show of a chart; undefined for kinds it does not know (those stay in the file untouched). */
export function chartFromXml(root: XmlElement, sheetId: SheetIdOf): Omit<ChartRecord, "id" | "name" | "position" | "anchor"> | undefined {
  const chart = descend(root, "chart");
  const plotArea = descend(chart, "plotArea");
  const plots = plotArea?.children.filter((child) => (ELEMENTS as readonly string[]).includes(localName(child))) ?? [];
  const [main] = plots;
  if (!main || plotArea?.children.some((child) => /Chart$/.test(localName(child)) && !plots.includes(child))) return undefined;
  if (plots.some((plot) => localName(plot) !== localName(main))) return undefined;
  const legend = descend(chart, "legend");
  const title = deepText(findDeep(descend(chart, "title"), "rich")).trim();
  const axisOf = (id: string | undefined): XmlElement | undefined =>
    plotArea?.children.find((one) => val(one, "axId") === id && /Ax$/.test(localName(one)));
  const axesOf = (plot: XmlElement | undefined): (XmlElement | undefined)[] =>
    childrenOf(plot, "axId").map((one) => axisOf(one.attributes.val));
  const axes = axesOf(main);
  const secondary = axisFromXml(axesOf(plots[1])[1]);
  const mainType = chartTypeOf(kindOf(main, childrenOf(main, "ser")[0]));
  const unlisted = new Set(
    childrenOf(legend, "legendEntry")
      .filter((entry) => isTrue(val(entry, "delete")))
      .map((entry) => Number(val(entry, "idx"))),
  );
  const position = LEGEND_PLACES[val(legend, "legendPos") ?? ""];
  return {
    type: mainType,
    ...(title ? { title } : {}),
    ...size("titleSize", findDeep(descend(chart, "title"), "rPr")),
    ...size("fontSize", findDeep(descend(root, "txPr"), "defRPr")),
    showLegend: legend !== undefined,
    ...(position ? { legendPosition: position } : {}),
    series: plots
      .flatMap((plot) => childrenOf(plot, "ser").map((series) => ({ series, plot })))
      .sort((a, b) => Number(val(a.series, "order")) - Number(val(b.series, "order")))
      .map(({ series, plot }, index) => ({
        ...seriesFromXml(series, plot !== main, sheetId),
        ...ownType(chartTypeOf(kindOf(plot, series)), mainType),
        ...(unlisted.has(index) ? { unlisted: true } : {}),
      })),
    axes: { category: axisFromXml(axes[0]), value: axisFromXml(axes[1]), ...(Object.keys(secondary).length > 0 ? { secondary } : {}) },
  };
}

const val = (element: XmlElement | undefined, name: string): string | undefined => childrenOf(element, name)[0]?.attributes.val;
const size = (name: "titleSize" | "fontSize", font: XmlElement | undefined): Partial<ChartRecord> =>
  font?.attributes.sz ? { [name]: Number(font.attributes.sz) / 100 } : {};
const isTrue = (value: string | undefined): boolean => value === "1" || value === "true";

/** Only what is drawn with lines or marks can differ from series to series within one plot. */
const ownType = (type: string, mainType: string): { type?: string } =>
  type !== mainType && /^(XYScatter|Line)/.test(type) ? { type } : {};

function kindOf(plot: XmlElement, series: XmlElement | undefined): ChartKind {
  const element = localName(plot) as ChartKind["element"];
  if (element === "barChart") {
    return {
      element,
      grouping: (val(plot, "grouping") ?? "clustered") as ChartKind["grouping"] & string,
      horizontal: val(plot, "barDir") === "bar",
    };
  }
  if (element !== "lineChart" && element !== "scatterChart") {
    return { element, ...(val(plot, "grouping") ? { grouping: val(plot, "grouping") as ChartKind["grouping"] & string } : {}) };
  }
  const symbol = val(descend(series, "marker"), "symbol");
  return {
    element,
    lines: descend(series, "spPr", "ln", "noFill") === undefined,
    markers: symbol === undefined ? element === "scatterChart" || isTrue(val(plot, "marker")) : symbol !== "none",
    ...(element === "lineChart" ? { grouping: "standard" } : { smooth: isTrue(val(series, "smooth")) }),
  };
}

function seriesFromXml(series: XmlElement, secondary: boolean, sheetId: SheetIdOf): ChartSeriesRecord {
  const block = (...names: string[]): CellBlock | undefined =>
    blockFromText(
      names.map((name) => deepText(findDeep(descend(series, name), "f"))).find((text) => text !== ""),
      sheetId,
    );
  const nameFrom = block("tx");
  const name = deepText(descend(series, "tx", "v")).trim() || deepText(findDeep(descend(series, "tx"), "v")).trim();
  const xValues = block("xVal", "cat");
  const values = block("yVal", "val");
  const fill =
    descend(series, "spPr", "ln", "solidFill", "srgbClr") ??
    descend(series, "spPr", "solidFill", "srgbClr") ??
    descend(series, "marker", "spPr", "solidFill", "srgbClr");
  return {
    ...(nameFrom ? { nameFrom } : name ? { name } : {}),
    ...(xValues ? { xValues } : {}),
    ...(values ? { values } : {}),
    ...(fill?.attributes.val ? { color: `#${fill.attributes.val.toUpperCase()}` } : {}),
    ...(secondary ? { secondary } : {}),
    ...seriesLook(series),
  };
}

function blockFromText(text: string | undefined, sheetId: SheetIdOf): CellBlock | undefined {
  const { sheet, rest } = splitSheet(text ?? "");
  const id = sheet === undefined ? undefined : sheetId(sheet);
  const block = parseBlock(rest);
  if (id === undefined || !block) return undefined;
  return {
    sheetId: id,
    row: block.startRow,
    column: block.startColumn,
    rowCount: block.endRow - block.startRow + 1,
    columnCount: block.endColumn - block.startColumn + 1,
  };
}

function axisFromXml(axis: XmlElement | undefined): ChartAxisRecord {
  const title = deepText(findDeep(descend(axis, "title"), "rich")).trim();
  const minimum = val(descend(axis, "scaling"), "min");
  const maximum = val(descend(axis, "scaling"), "max");
  const format = descend(axis, "numFmt")?.attributes;
  return {
    ...(title ? { title } : {}),
    ...(minimum === undefined ? {} : { minimum: Number(minimum) }),
    ...(maximum === undefined ? {} : { maximum: Number(maximum) }),
    ...(format?.formatCode && !isTrue(format.sourceLinked) ? { numberFormat: format.formatCode } : {}),
  };
}
