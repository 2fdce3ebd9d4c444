import { parseCells, splitAddress } from "./address";
import type { SheetBlock } from "./cell-writer";
import { itemNotFound } from "./errors";
import type { Host } from "./host";
import type { Scope } from "./named-items";
import { Range } from "./range";

/** Cells as a collection is told of them: where no sheet is named, those of its own sheet; of a workbook's, the one in front. */
export function scopedBlock(host: Host, { sheetId }: Scope, address: Range | string): SheetBlock {
  if (address instanceof Range) return address.target;
  const { sheetName, cells } = splitAddress(address);
  const own = () => (sheetId === undefined ? host.workbook.getActiveSheet() : host.sheet(sheetId));
  const sheet = sheetName === undefined ? own() : host.workbook.getSheetByName(sheetName);
  if (!sheet) throw itemNotFound("worksheet");
  return { ...parseCells(cells, { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() }), sheetId: sheet.getSheetId() };
}
