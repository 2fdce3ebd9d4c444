import type { IWorksheetData } from "@univerjs/core";
import type { ChartRecord } from "../../excel/sheet-extras";
import { cellAddress, parseBlock } from "../addresses";
import { defaultSizes } from "../sheet-fragments";
import { childrenOf, descend, localName, type XmlElement } from "../xml";

/** Office measures drawings in units of 1/914400 inch. */
const UNITS_PER_POINT = 12_700;
const UNITS_PER_PIXEL = 9_525;
/** Farther right or down than this a sheet is not measured. */
const MEASURED = 20_000;

type Placing = Pick<ChartRecord, "position" | "anchor">;
export interface Corner {
  column: number;
  columnOffset: number;
  row: number;
  rowOffset: number;
}

const columnUnits = (sheet: Partial<IWorksheetData>, index: number): number =>
  sheet.columnData?.[index]?.hd ? 0 : (sheet.columnData?.[index]?.w ?? defaultSizes(sheet).column) * UNITS_PER_PIXEL;
const rowUnits = (sheet: Partial<IWorksheetData>, index: number): number => {
  const row = sheet.rowData?.[index];
  return row?.hd ? 0 : ((row?.ia ? row.ah : row?.h) ?? defaultSizes(sheet).row) * UNITS_PER_PIXEL;
};

type Size = (sheet: Partial<IWorksheetData>, index: number) => number;

/** The distance from the sheet's edge to a column or row. */
function edge(sheet: Partial<IWorksheetData>, index: number, size: Size): number {
  let sum = 0;
  for (let at = 0; at < index; at++) sum += size(sheet, at);
  return sum;
}

/** The column or row that lies at a distance from the sheet's edge, and how far into it. */
function locate(sheet: Partial<IWorksheetData>, distance: number, size: Size): { index: number; offset: number } {
  let rest = Math.max(0, distance);
  let index = 0;
  while (index < MEASURED && rest >= size(sheet, index)) rest -= size(sheet, index++);
  return { index, offset: Math.round(rest) };
}

/** Where a chart lies, from the anchor of a drawing; undefined for an anchor of no known kind. */
export function placingFromFile(anchor: XmlElement, sheet: Partial<IWorksheetData>): Placing | undefined {
  const from = corner(descend(anchor, "from"));
  const to = corner(descend(anchor, "to"));
  const extent = descend(anchor, "ext")?.attributes;
  const start = from ? distances(from, sheet) : absolute(descend(anchor, "pos")?.attributes);
  const end =
    to && localName(anchor) === "twoCellAnchor"
      ? distances(to, sheet)
      : start && extent
        ? { x: start.x + Number(extent.cx), y: start.y + Number(extent.cy) }
        : undefined;
  if (!start || !end) return undefined;
  const position = { left: points(start.x), top: points(start.y), width: points(end.x - start.x), height: points(end.y - start.y) };
  const exact = from && to && [from, to].every((one) => one.columnOffset === 0 && one.rowOffset === 0) && to.column > 0 && to.row > 0;
  return {
    position,
    ...(exact ? { anchor: { startCell: cellAddress(from.row, from.column), endCell: cellAddress(to.row - 1, to.column - 1) } } : {}),
  };
}

const points = (units: number): number => Math.round((units / UNITS_PER_POINT) * 1000) / 1000;
const absolute = (pos: Record<string, string> | undefined): { x: number; y: number } | undefined =>
  pos && { x: Number(pos.x), y: Number(pos.y) };

function corner(element: XmlElement | undefined): Corner | undefined {
  if (!element) return undefined;
  const number = (name: string): number => Number(childrenOf(element, name)[0]?.text.trim() || 0);
  return { column: number("col"), columnOffset: number("colOff"), row: number("row"), rowOffset: number("rowOff") };
}

function distances(at: Corner, sheet: Partial<IWorksheetData>): { x: number; y: number } {
  return { x: edge(sheet, at.column, columnUnits) + at.columnOffset, y: edge(sheet, at.row, rowUnits) + at.rowOffset };
}

/** The `from` and `to` of a drawing's two-cell anchor. Cells, where the chart was placed by cells, decide over points. */
export function placingToFile(chart: Placing, sheet: Partial<IWorksheetData>): string {
  const start = chart.anchor && parseBlock(chart.anchor.startCell);
  const end = chart.anchor?.endCell ? parseBlock(chart.anchor.endCell) : undefined;
  const left = start ? edge(sheet, start.startColumn, columnUnits) : chart.position.left * UNITS_PER_POINT;
  const top = start ? edge(sheet, start.startRow, rowUnits) : chart.position.top * UNITS_PER_POINT;
  const from = cornerAt(sheet, left, top);
  const to = end
    ? { column: end.endColumn + 1, columnOffset: 0, row: end.endRow + 1, rowOffset: 0 }
    : cornerAt(sheet, left + chart.position.width * UNITS_PER_POINT, top + chart.position.height * UNITS_PER_POINT);
  return `<xdr:from>${cornerXml(from)}</xdr:from><xdr:to>${cornerXml(to)}</xdr:to>`;
}

function cornerAt(sheet: Partial<IWorksheetData>, x: number, y: number): Corner {
  const column = locate(sheet, x, columnUnits);
  const row = locate(sheet, y, rowUnits);
  return { column: column.index, columnOffset: column.offset, row: row.index, rowOffset: row.offset };
}

/** The pixels between two corners; used for the frames of notes, which count in pixels. */
export function spanInPixels(from: Corner, to: Corner, sheet: Partial<IWorksheetData>): { width: number; height: number } {
  const start = distances(from, sheet);
  const end = distances(to, sheet);
  return { width: Math.round((end.x - start.x) / UNITS_PER_PIXEL), height: Math.round((end.y - start.y) / UNITS_PER_PIXEL) };
}

/** The corner that lies so many pixels right of and below another. */
export function cornerBeyond(from: Corner, width: number, height: number, sheet: Partial<IWorksheetData>): Corner {
  const start = distances(from, sheet);
  return cornerAt(sheet, start.x + width * UNITS_PER_PIXEL, start.y + height * UNITS_PER_PIXEL);
}

export const pixelCorner = (column: number, columnPixels: number, row: number, rowPixels: number): Corner => ({
  column,
  columnOffset: columnPixels * UNITS_PER_PIXEL,
  row,
  rowOffset: rowPixels * UNITS_PER_PIXEL,
});
export const pixelsInto = (offset: number): number => Math.round(offset / UNITS_PER_PIXEL);

const cornerXml = (at: Corner): string =>
  `<xdr:col>${at.column}</xdr:col><xdr:colOff>${at.columnOffset}</xdr:colOff>` +
  `<xdr:row>${at.row}</xdr:row><xdr:rowOff>${at.rowOffset}</xdr:rowOff>`;
