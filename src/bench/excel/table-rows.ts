import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { SheetTableInsertRowAtCommand } from "@univerjs/sheets-table";
import { assertUnlocked, type SheetBlock } from "./cell-writer";
import { readFormulas, shaped, writeValues } from "./cell-values";
import { ClientResult } from "./collection";
import type { StandsFor } from "./standing";
import type { Table } from "./table";

/** Stands in for Excel.TableRowCollection. */
export class TableRowCollection implements StandsFor<Excel.TableRowCollection, "add" | "getCount" | "deleteRowsAt"> {
  constructor(private readonly table: Table) {}

  /**
   * Adds rows before `index`, or at the end for null. Cells below the table move down. A cell given as null gets the
   * formula of the row above, as Excel fills its calculated columns.
   */
  add(index: number | null = null, values?: unknown, _alwaysInsert?: boolean): void {
    this.table.context.write(() => {
      const { host } = this.table.context;
      const whole = this.table.block();
      const dataRows = whole.rowCount - 1;
      const count = Array.isArray(values) && Array.isArray(values[0]) ? values.length : 1;
      const row = whole.row + 1 + (index ?? dataRows);
      const added: SheetBlock = { ...whole, row, rowCount: count };
      const cells = shaped(values === undefined ? null : Array.isArray(values) && !Array.isArray(values[0]) ? [values] : values, added);
      assertUnlocked(host, added);
      host.command(SheetTableInsertRowAtCommand.id, { subUnitId: whole.sheetId, tableId: this.table.target, index: row, count });
      const above = dataRows > 0 ? readFormulas(host, { ...whole, row: row === whole.row + 1 ? row + count : row - 1, rowCount: 1 })[0]! : [];
      writeValues(host, added, cells.map((line, offset) => line.map((cell, column) => cell ?? this.filled(above[column], offset + 1))));
    });
  }

  getCount(): ClientResult<number> {
    const result = new ClientResult<number>();
    this.table.context.read(() => result.settle(this.table.block().rowCount - 1));
    return result;
  }

  load(): this {
    return this;
  }

  deleteRowsAt(index: number, count = 1): void {
    this.table.cells((whole) => ({ ...whole, row: whole.row + 1 + index, rowCount: count })).delete("Up");
  }

  private filled(above: string | number | boolean | undefined, rowsDown: number): string | null {
    if (typeof above !== "string" || !above.startsWith("=")) return null;
    return this.table.context.host.engine.injector.get(LexerTreeBuilder).moveFormulaRefOffset(above, 0, rowsDown);
  }
}
