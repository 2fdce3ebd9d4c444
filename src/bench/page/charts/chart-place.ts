import type { FWorksheet } from "@univerjs/sheets/facade";
import type { ChartRecord } from "../../../excel-stand-in/excel/sheet-extras";
import type { Box, View } from "../grid-canvas";

const pixelsPerPoint = 4 / 3;

export interface Place extends Box {
  /** It lies in rows, or columns, that do not scroll. */
  fixedX: boolean;
  fixedY: boolean;
}

/** Where a chart lies on its sheet, in unzoomed pixels from the sheet's corner: over its cells if it has some. */
export function placeOf(sheet: FWorksheet, { anchor, position }: ChartRecord, { headings, zoom, frozen }: View): Place {
  const corner = { x: headings.width / zoom, y: headings.height / zoom };
  const box = anchor === undefined ? undefined : boxOfCells(sheet, anchor, corner, position);
  const { x, y, width, height } = box ?? {
    x: position.left * pixelsPerPoint,
    y: position.top * pixelsPerPoint,
    width: position.width * pixelsPerPoint,
    height: position.height * pixelsPerPoint,
  };
  return { x, y, width, height, fixedX: x * zoom < frozen.width, fixedY: y * zoom < frozen.height };
}

function boxOfCells(
  sheet: FWorksheet,
  { startCell, endCell }: NonNullable<ChartRecord["anchor"]>,
  corner: { x: number; y: number },
  position: ChartRecord["position"],
): Box {
  const start = sheet.getRange(startCell).getCellRect();
  const end = endCell === undefined ? undefined : sheet.getRange(endCell).getCellRect();
  return {
    x: start.x - corner.x,
    y: start.y - corner.y,
    width: end === undefined ? position.width * pixelsPerPoint : end.x + end.width - start.x,
    height: end === undefined ? position.height * pixelsPerPoint : end.y + end.height - start.y,
  };
}
