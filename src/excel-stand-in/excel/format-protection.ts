import { assertFormatsOpen, isUnlocked, writeCells, type SheetBlock } from "./cell-writer";
import { RangePart } from "./range-part";
import type { StandsFor } from "./standing";

/** Stands in for Excel.FormatProtection. Cells are locked until said otherwise; it matters once the sheet is protected. */
export class FormatProtection extends RangePart implements StandsFor<Excel.FormatProtection, keyof FormatProtection> {
  declare locked: boolean;

  protected override changes() {
    return {
      locked: (locked: boolean) =>
        this.set("locked", locked, (block) => {
          assertFormatsOpen(this.context.host, block);
          const sheet = this.context.host.gridSheet(block.sheetId);
          writeCells(this.context.host, block, true, (row, column) => {
            const cell = sheet.getCellRaw(block.row + row, block.column + column);
            return isUnlocked(cell) === !locked ? undefined : { custom: { ...cell?.custom, unlocked: !locked } };
          });
        }),
    };
  }

  protected override readers() {
    return {
      locked: (block: SheetBlock) => {
        const sheet = this.context.host.gridSheet(block.sheetId);
        return !isUnlocked(sheet.getCellRaw(block.row, block.column));
      },
    };
  }
}
