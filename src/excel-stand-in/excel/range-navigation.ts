import type { Block } from "./address";
import type { SheetBlock } from "./cell-writer";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { fromGridRange } from "./grid-ranges";
import type { Range } from "./range";
import { usedBlock } from "./used-block";

/** The part of a range that leads to other ranges: in it, and where its results spill. */
export abstract class RangeNavigation extends ClientObject<SheetBlock, Context> {
  getCell(row: number, column: number): Range {
    return this.derive((block) => ({ row: block.row + row, column: block.column + column, rowCount: 1, columnCount: 1 }));
  }
  /** The cells in use within this range. */
  getUsedRange(valuesOnly = false): Range {
    return this.calculated().derive((block) => this.used(block, valuesOnly) ?? { ...block, rowCount: 1, columnCount: 1 });
  }
  getUsedRangeOrNullObject(valuesOnly = false): Range {
    return this.calculated().deriveOrNull((block) => this.used(block, valuesOnly));
  }

  getSpillingToRangeOrNullObject(): Range {
    return this.calculated().deriveOrNull((block) => this.spillFrom(block));
  }

  /** From a cell that a formula spills into to the cell with the formula. */
  getSpillParentOrNullObject(): Range {
    return this.calculated().deriveOrNull((block) => this.spillParent(block));
  }

  protected abstract derive(change: (block: SheetBlock) => Block): Range;
  protected abstract deriveOrNull(change: (block: SheetBlock) => Block | undefined): Range;

  /** What spills is known when the writes before are calculated. */
  private calculated(): this {
    this.context.read(() => undefined);
    return this;
  }

  protected size({ sheetId }: SheetBlock) {
    const sheet = this.context.host.sheet(sheetId);
    return { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() };
  }

  private used(block: SheetBlock, valuesOnly: boolean): Block | undefined {
    return usedBlock(this.context.host, block.sheetId, valuesOnly, block);
  }

  private spillFrom({ sheetId, row, column, rowCount, columnCount }: SheetBlock): Block | undefined {
    const extent = rowCount * columnCount === 1 ? this.extent(sheetId, row, column) : undefined;
    return extent?.startRow === row && extent.startColumn === column ? fromGridRange(sheetId, extent) : undefined;
  }

  private spillParent({ sheetId, row, column, rowCount, columnCount }: SheetBlock): Block | undefined {
    const extent = rowCount * columnCount === 1 ? this.extent(sheetId, row, column) : undefined;
    return extent && { row: extent.startRow, column: extent.startColumn, rowCount: 1, columnCount: 1 };
  }

  /** A block of one cell is no spill. */
  private extent(sheetId: string, row: number, column: number) {
    const extent = this.context.host.engine.spills.extentAt(this.context.host.unitId, sheetId, row, column);
    return extent && (extent.endRow > extent.startRow || extent.endColumn > extent.startColumn) ? extent : undefined;
  }
}
