import { parseCells, type Block } from "./address";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { Range } from "./range";
import type { StandsFor } from "./standing";

/** Stands in for Excel.WorksheetFreezePanes. */
export class FreezePanes
  extends ClientObject<string, Context>
  implements StandsFor<Excel.WorksheetFreezePanes, "freezeRows" | "freezeColumns" | "freezeAt" | "unfreeze" | "getLocationOrNullObject">
{
  freezeRows(count = 1): void {
    this.write((sheetId) => {
      this.freeze(sheetId, count, 0);
    });
  }
  freezeColumns(count = 1): void {
    this.write((sheetId) => {
      this.freeze(sheetId, 0, count);
    });
  }

  /** Freezes everything above and left of the end of the given cells. */
  freezeAt(cells: Range | Excel.Range | string): void {
    this.write((sheetId) => {
      const block = cells instanceof Range ? cells.target : this.parse(sheetId, cells as string);
      this.freeze(sheetId, block.row + block.rowCount, block.column + block.columnCount);
    });
  }

  unfreeze(): void {
    this.write((sheetId) => {
      this.context.host.sheet(sheetId).cancelFreeze();
    });
  }

  getLocationOrNullObject(): Range {
    const find = () => {
      if (this.isNullObject) return undefined;
      const sheet = this.context.host.sheet(this.target);
      const { startRow, startColumn } = sheet.getFreeze();
      if (startRow <= 0 && startColumn <= 0) return undefined;
      const [rowCount, columnCount] = [startRow > 0 ? startRow : sheet.getMaxRows(), startColumn > 0 ? startColumn : sheet.getMaxColumns()];
      return { sheetId: this.target, row: 0, column: 0, rowCount, columnCount };
    };
    return new Range(this.context, { name: "range", missing: "null", find });
  }

  protected readers() {
    return {};
  }

  private freeze(sheetId: string, rows: number, columns: number): void {
    this.context.host.sheet(sheetId).setFreeze({ xSplit: columns, ySplit: rows, startRow: rows || -1, startColumn: columns || -1 });
  }

  private parse(sheetId: string, cells: string): Block {
    const sheet = this.context.host.sheet(sheetId);
    return parseCells(cells.slice(cells.lastIndexOf("!") + 1), { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() });
  }
}
