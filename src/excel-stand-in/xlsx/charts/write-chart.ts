import type { CellBlock, ChartRecord, ChartSeriesRecord } from "../../excel/sheet-extras";
import { absoluteAddress, sheetPrefix } from "../addresses";
import { XML_START } from "../relationships";
import { escapeXml } from "../xml";
import { axesXml, PRIMARY_AXES, SECONDARY_AXES } from "./chart-axes";
import { chartKind, hasAxes, type ChartKind } from "./chart-kinds";
import { fontXml, titleXml, valueXml } from "./chart-text";
import { seriesLookXml } from "./series-look";

const NAMESPACES =
  'xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"' +
  ' xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';
const LEGEND_PLACES: Record<string, string> = { Top: "t", Bottom: "b", Left: "l", Right: "r", Corner: "tr" };

/** Our own writer: hucre's has neither a second value axis nor series named by a cell. */
export function chartXml(chart: ChartRecord, sheetName: (sheetId: string) => string | undefined): string {
  const kind = chartKind(chart.type);
  const numbered = chart.series.map((series, index) => ({ series, index }));
  const first = numbered.filter(({ series }) => !series.secondary || !hasAxes(kind));
  const second = numbered.filter((one) => !first.includes(one));
  const plots = plotXml(kind, first, PRIMARY_AXES, sheetName) + (second.length > 0 ? plotXml(kind, second, SECONDARY_AXES, sheetName) : "");
  const legend =
    chart.showLegend === false
      ? ""
      : `<c:legend>${valueXml("legendPos", LEGEND_PLACES[chart.legendPosition ?? ""] ?? "b")}${unlistedXml(chart)}${valueXml("overlay", false)}</c:legend>`;
  return (
    `${XML_START}<c:chartSpace ${NAMESPACES}>${valueXml("roundedCorners", false)}<c:chart>${titleXml(chart.title, false, chart.titleSize)}` +
    `${valueXml("autoTitleDeleted", !chart.title)}<c:plotArea><c:layout/>${plots}${axesXml(chart, kind, second.length > 0)}</c:plotArea>` +
    `${legend}${valueXml("plotVisOnly", true)}${valueXml("dispBlanksAs", "gap")}</c:chart>${fontXml(chart.fontSize)}</c:chartSpace>`
  );
}

/** Entries that the legend leaves out. */
const unlistedXml = (chart: ChartRecord): string =>
  chart.series
    .map(({ unlisted }, index) => (unlisted ? `<c:legendEntry>${valueXml("idx", index)}${valueXml("delete", true)}</c:legendEntry>` : ""))
    .join("");

type Numbered = { series: ChartSeriesRecord; index: number };
type NameOf = (sheetId: string) => string | undefined;

function plotXml(kind: ChartKind, list: Numbered[], axes: typeof PRIMARY_AXES, sheetName: NameOf): string {
  const series = list.map((one) => seriesXml(one, kind, sheetName)).join("");
  const ids = hasAxes(kind) ? valueXml("axId", axes.category) + valueXml("axId", axes.value) : "";
  const inside = {
    lineChart: () => valueXml("grouping", "standard") + valueXml("varyColors", false) + series + valueXml("marker", true) + ids,
    scatterChart: () =>
      valueXml("scatterStyle", kind.smooth ? "smoothMarker" : "lineMarker") + valueXml("varyColors", false) + series + ids,
    barChart: () =>
      valueXml("barDir", kind.horizontal ? "bar" : "col") +
      valueXml("grouping", kind.grouping ?? "clustered") +
      valueXml("varyColors", false) +
      series +
      valueXml("gapWidth", 80) +
      (kind.grouping === "clustered" ? "" : valueXml("overlap", 100)) +
      ids,
    areaChart: () => valueXml("grouping", kind.grouping ?? "standard") + valueXml("varyColors", false) + series + ids,
    pieChart: () => valueXml("varyColors", true) + series,
    doughnutChart: () => valueXml("varyColors", true) + series + valueXml("holeSize", 60),
  }[kind.element]();
  return `<c:${kind.element}>${inside}</c:${kind.element}>`;
}

function seriesXml({ series, index }: Numbered, kind: ChartKind, sheetName: NameOf): string {
  const reference = (block: CellBlock | undefined): string | undefined => blockReference(block, sheetName);
  const nameReference = reference(series.nameFrom);
  const name = nameReference
    ? `<c:tx><c:strRef><c:f>${escapeXml(nameReference)}</c:f></c:strRef></c:tx>`
    : series.name
      ? `<c:tx><c:v>${escapeXml(series.name)}</c:v></c:tx>`
      : "";
  const scatter = kind.element === "scatterChart";
  const numbers = (element: string, block: CellBlock | undefined): string => {
    const text = reference(block);
    return text ? `<c:${element}><c:numRef><c:f>${escapeXml(text)}</c:f></c:numRef></c:${element}>` : "";
  };
  return (
    `<c:ser>${valueXml("idx", index)}${valueXml("order", index)}${name}${seriesLookXml(series, kind)}` +
    numbers(scatter ? "xVal" : "cat", series.xValues) +
    numbers(scatter ? "yVal" : "val", series.values) +
    (scatter || kind.element === "lineChart" ? valueXml("smooth", kind.smooth ?? false) : "") +
    "</c:ser>"
  );
}

function blockReference(block: CellBlock | undefined, sheetName: NameOf): string | undefined {
  const name = block && sheetName(block.sheetId);
  if (!block || name === undefined) return undefined;
  return (
    sheetPrefix(name) +
    absoluteAddress({
      startRow: block.row,
      startColumn: block.column,
      endRow: block.row + block.rowCount - 1,
      endColumn: block.column + block.columnCount - 1,
    })
  );
}
