import type { IStyleData, Nullable } from "@univerjs/core";
import { assertFormatsOpen, writeCells, type SheetBlock } from "./cell-writer";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { Range } from "./range";

/** Base of what hangs below a range: it stands for the same cells, and changes their looks. */
export abstract class RangePart extends ClientObject<SheetBlock, Context> {
  constructor(protected readonly range: Range) {
    super(range.context, { name: "range", missing: "null", find: () => (range.isNullObject ? undefined : range.target) });
  }

  protected setStyle(property: string, value: unknown, style: IStyleData): void {
    this.set(property, value, (block) => {
      assertFormatsOpen(this.context.host, block);
      writeCells(this.context.host, block, true, () => ({ s: style }));
    });
  }

  /** The common value of all cells, null where they differ, as Excel answers. */
  protected common<T>(block: SheetBlock, read: (style: Nullable<IStyleData>) => T): T | null {
    const sheet = this.context.host.gridSheet(block.sheetId);
    const first = read(sheet.getCellStyle(block.row, block.column));
    for (let row = 0; row < block.rowCount; row++) {
      for (let column = 0; column < block.columnCount; column++) {
        if (read(sheet.getCellStyle(block.row + row, block.column + column)) !== first) return null;
      }
    }
    return first;
  }
}

/** Excel gives colours as #RRGGBB in capitals and takes names as well; the grid takes any CSS colour. */
export const excelColor = (rgb: Nullable<string>, fallback: string): string => (rgb ? rgb.toUpperCase() : fallback);
