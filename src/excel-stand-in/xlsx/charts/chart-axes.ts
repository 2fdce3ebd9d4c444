import type { ChartAxisRecord, ChartRecord } from "../../excel/sheet-extras";
import { hasAxes, type ChartKind } from "./chart-kinds";
import { titleXml, valueXml } from "./chart-text";

/** The ids that join a chart's plots to its axes. */
export const PRIMARY_AXES = { category: 111_111_111, value: 111_111_112 };
export const SECONDARY_AXES = { category: 111_111_113, value: 111_111_114 };

export function axesXml(chart: ChartRecord, kind: ChartKind, secondary: boolean): string {
  if (!hasAxes(kind)) return "";
  const scatter = kind.element === "scatterChart";
  const category = axisXml(scatter ? "valAx" : "catAx", {
    id: PRIMARY_AXES.category,
    crosses: PRIMARY_AXES.value,
    position: kind.horizontal ? "l" : "b",
    axis: chart.axes.category,
    turned: Boolean(kind.horizontal),
    scatter,
  });
  const value = axisXml("valAx", {
    id: PRIMARY_AXES.value,
    crosses: PRIMARY_AXES.category,
    position: kind.horizontal ? "b" : "l",
    axis: chart.axes.value,
    gridlines: true,
    turned: !kind.horizontal,
    scatter,
  });
  if (!secondary) return category + value;
  // A second value axis needs a category axis of its own, which is not shown.
  return (
    category +
    value +
    axisXml("valAx", {
      id: SECONDARY_AXES.value,
      crosses: SECONDARY_AXES.category,
      position: "r",
      axis: chart.axes.secondary ?? {},
      turned: true,
      atMaximum: true,
      scatter,
    }) +
    axisXml(scatter ? "valAx" : "catAx", {
      id: SECONDARY_AXES.category,
      crosses: SECONDARY_AXES.value,
      position: "b",
      axis: {},
      deleted: true,
      scatter,
    })
  );
}

interface AxisOptions {
  id: number;
  crosses: number;
  position: string;
  axis: ChartAxisRecord;
  gridlines?: boolean;
  turned?: boolean;
  deleted?: boolean;
  atMaximum?: boolean;
  scatter: boolean;
}

/** The order of the elements is fixed by the format (ECMA-376 part 1, 21.2.2.25 and 21.2.2.226). */
function axisXml(element: "valAx" | "catAx", options: AxisOptions): string {
  const { axis } = options;
  const scaling =
    valueXml("orientation", "minMax") +
    (axis.maximum === undefined ? "" : valueXml("max", axis.maximum)) +
    (axis.minimum === undefined ? "" : valueXml("min", axis.minimum));
  return (
    `<c:${element}>${valueXml("axId", options.id)}<c:scaling>${scaling}</c:scaling>${valueXml("delete", options.deleted ?? false)}` +
    valueXml("axPos", options.position) +
    (options.gridlines
      ? '<c:majorGridlines><c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="D9D9D9"/></a:solidFill></a:ln></c:spPr></c:majorGridlines>'
      : "") +
    titleXml(axis.title, options.turned) +
    `<c:numFmt formatCode="${(axis.numberFormat ?? "General").replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;")}" sourceLinked="${axis.numberFormat ? 0 : 1}"/>` +
    valueXml("majorTickMark", "out") +
    valueXml("minorTickMark", "none") +
    valueXml("tickLblPos", "nextTo") +
    valueXml("crossAx", options.crosses) +
    valueXml("crosses", options.atMaximum ? "max" : "autoZero") +
    (element === "valAx" ? valueXml("crossBetween", options.scatter ? "midCat" : "between") : "") +
    `</c:${element}>`
  );
}
