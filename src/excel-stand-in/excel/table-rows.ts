import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { SheetTableInsertRowAtCommand } from "@univerjs/sheets-table";
import { assertUnlocked, type SheetBlock } from "./cell-writer";
import { readFormulas, shaped, writeValues } from "./cell-values";
import { ClientCollection } from "./collection";
import type { Context } from "./context";
import { invalidArgument } from "./errors";
import type { Range } from "./range";
import type { StandsFor } from "./standing";
import type { Table } from "./table";

/** Stands in for Excel.TableRowCollection; a row is known by its cells here. */
export class TableRowCollection
  extends ClientCollection<Range, string, Context>
  implements StandsFor<Excel.TableRowCollection, "add" | "getCount">
{
  constructor(private readonly table: Table) {
    super(table.context, { name: "rows", missing: "null", find: () => (table.isNullObject ? undefined : table.target) });
  }

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
      if (index !== null && (index < 0 || index > dataRows)) throw invalidArgument("The table has no such row.");
      const row = whole.row + 1 + (index ?? dataRows);
      const added: SheetBlock = { ...whole, row, rowCount: count };
      const cells = shaped(values === undefined ? null : Array.isArray(values) && !Array.isArray(values[0]) ? [values] : values, added);
      assertUnlocked(host, added);
      host.command(SheetTableInsertRowAtCommand.id, { subUnitId: whole.sheetId, tableId: this.table.target, index: row, count });
      const above =
        dataRows > 0 ? readFormulas(host, { ...whole, row: row === whole.row + 1 ? row + count : row - 1, rowCount: 1 })[0]! : [];
      writeValues(
        host,
        added,
        cells.map((line, offset) => line.map((cell, column) => cell ?? this.filled(above[column], offset + 1))),
      );
    });
  }

  protected list(): Range[] {
    return Array.from({ length: this.table.block().rowCount - 1 }, (_, index) =>
      this.table.cells((whole) => ({ ...whole, row: whole.row + 1 + index, rowCount: 1 })),
    );
  }

  private filled(above: string | number | boolean | undefined, rowsDown: number): string | null {
    if (typeof above !== "string" || !above.startsWith("=")) return null;
    return this.table.context.host.engine.injector.get(LexerTreeBuilder).moveFormulaRefOffset(above, 0, rowsDown);
  }
}
