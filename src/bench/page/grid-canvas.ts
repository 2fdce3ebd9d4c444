import type { FRange, FWorksheet } from "@univerjs/sheets/facade";

export interface Box { x: number; y: number; width: number; height: number }

/**
 * Where a cell lies on the page, in CSS pixels. The grid draws on a canvas, so there is no element to ask.
 * The cell must not be scrolled out of view.
 */
export function pageBoxOf(sheet: FWorksheet, range: FRange): Box {
  const cell = range.getCellRect();
  const canvas = document.querySelector("#grid canvas[id^='univer-sheet-main-canvas']")!.getBoundingClientRect();
  const { sheetViewStartRow, sheetViewStartColumn, offsetX, offsetY } = sheet.getScrollState();
  const frozen = sheet.getFreeze();
  const first = sheet.getRange(Math.max(0, frozen.startRow), Math.max(0, frozen.startColumn)).getCellRect();
  const start = sheet.getRange(sheetViewStartRow, sheetViewStartColumn).getCellRect();
  // Frozen rows and columns stay where they are while the rest scrolls below them.
  const scrolledX = range.getColumn() < frozen.startColumn ? 0 : start.x - first.x + offsetX;
  const scrolledY = range.getRow() < frozen.startRow ? 0 : start.y - first.y + offsetY;
  const zoom = sheet.getZoom();
  return { x: canvas.x + (cell.x - scrolledX) * zoom, y: canvas.y + (cell.y - scrolledY) * zoom, width: cell.width * zoom, height: cell.height * zoom };
}
