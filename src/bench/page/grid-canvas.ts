import type { FRange, FWorksheet } from "@univerjs/sheets/facade";

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** How the sheet lies on the grid's canvas at this moment. Lengths are CSS pixels of the page, after zooming. */
export interface View {
  /** The canvas on the page, headings included. */
  canvas: DOMRect;
  zoom: number;
  headings: { width: number; height: number };
  /** How far the part that scrolls is scrolled. */
  scrolled: { x: number; y: number };
  /** Rows and columns before these stay where they are. */
  frozen: { row: number; column: number; width: number; height: number };
}

/** The grid draws on a canvas, so there is no element to ask; undefined before the first drawing. */
export function viewOf(sheet: FWorksheet): View | undefined {
  const canvas = document.querySelector("#grid canvas[id^='univer-sheet-main-canvas']")?.getBoundingClientRect();
  const skeleton = sheet.getSkeleton();
  if (canvas === undefined || !skeleton) return undefined;
  const zoom = sheet.getZoom();
  const { sheetViewStartRow, sheetViewStartColumn, offsetX, offsetY } = sheet.getScrollState();
  const freeze = sheet.getFreeze();
  const row = Math.max(0, freeze.startRow);
  const column = Math.max(0, freeze.startColumn);
  const corner = sheet.getRange(row, column).getCellRect();
  const start = sheet.getRange(sheetViewStartRow, sheetViewStartColumn).getCellRect();
  const headings = { width: skeleton.rowHeaderWidth, height: skeleton.columnHeaderHeight };
  return {
    canvas,
    zoom,
    headings: { width: headings.width * zoom, height: headings.height * zoom },
    // The grid counts what is scrolled from the sheet's own beginning, frozen rows and columns included.
    scrolled: { x: (start.x - headings.width + offsetX) * zoom, y: (start.y - headings.height + offsetY) * zoom },
    frozen: { row, column, width: (corner.x - headings.width) * zoom, height: (corner.y - headings.height) * zoom },
  };
}

/** Where a cell lies on the page, in CSS pixels. The cell must not be scrolled out of view. */
export function pageBoxOf(sheet: FWorksheet, range: FRange): Box {
  const view = viewOf(sheet);
  if (view === undefined) throw new Error("The grid is not drawn yet.");
  const { canvas, zoom, scrolled, frozen } = view;
  const cell = range.getCellRect();
  const x = cell.x * zoom - (range.getColumn() < frozen.column ? 0 : scrolled.x);
  const y = cell.y * zoom - (range.getRow() < frozen.row ? 0 : scrolled.y);
  return { x: canvas.x + x, y: canvas.y + y, width: cell.width * zoom, height: cell.height * zoom };
}
