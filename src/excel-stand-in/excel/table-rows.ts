import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { SheetTableInsertRowAtCommand } from "@univerjs/sheets-table";
import { assertUnlocked, type SheetBlock } from "./cell-writer";
import { readFormulas, readValues, shaped, writeValues } from "./cell-values";
import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { invalidArgument } from "./errors";
import type { Range } from "./range";
import type { StandsFor } from "./standing";
import type { Table } from "./table";

/** Stands in for Excel.TableRowCollection. */
export class TableRowCollection
  extends ClientCollection<TableRow, string, Context>
  implements StandsFor<Excel.TableRowCollection, "add" | "getCount" | "deleteRowsAt" | "getItemAt" | "items">
{
  constructor(private readonly table: Table) {
    super(table.context, { name: "rows", missing: "null", find: () => (table.isNullObject ? undefined : table.target) });
  }

  /**
   * Adds rows before `index`, or at the end for null. Cells below the table move down. A cell given as null gets the
   * formula of the row above, as Excel fills its calculated columns.
   */
  add(index: number | null = null, values?: unknown, _alwaysInsert?: boolean): TableRow {
    let addedAt: number | undefined;
    this.table.context.write(() => {
      const { host } = this.table.context;
      const whole = this.table.block();
      const dataRows = whole.rowCount - 1;
      const count = Array.isArray(values) && Array.isArray(values[0]) ? values.length : 1;
      if (index !== null && (index < 0 || index > dataRows)) throw invalidArgument("The table has no such row.");
      addedAt = index ?? dataRows;
      const row = whole.row + 1 + addedAt;
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
    return new TableRow(this.table, () => addedAt);
  }

  getItemAt(index: number): TableRow {
    return new TableRow(this.table, () => (index >= 0 && index < this.height() ? index : undefined));
  }

  deleteRowsAt(index: number, count = 1): void {
    this.table.cells((whole) => ({ ...whole, row: whole.row + 1 + index, rowCount: count })).delete("Up");
  }

  protected list(): TableRow[] {
    return Array.from({ length: this.height() }, (_, index) => new TableRow(this.table, () => index));
  }

  private height(): number {
    return this.table.block().rowCount - 1;
  }

  private filled(above: string | number | boolean | undefined, rowsDown: number): string | null {
    if (typeof above !== "string" || !above.startsWith("=")) return null;
    return this.table.context.host.engine.injector.get(LexerTreeBuilder).moveFormulaRefOffset(above, 0, rowsDown);
  }
}

/** Stands in for Excel.TableRow: a row by its place, whatever stands there now. */
export class TableRow
  extends ClientObject<number, Context>
  implements StandsFor<Excel.TableRow, "index" | "values" | "getRange" | "delete">
{
  constructor(
    private readonly table: Table,
    find: () => number | undefined,
  ) {
    super(table.context, { name: "row", missing: "throws", find });
  }

  get index(): number {
    return this.get("index");
  }
  get values(): Excel.TableRow["values"] {
    return this.get("values");
  }
  set values(values: unknown) {
    this.set("values", values, () => {
      assertUnlocked(this.context.host, this.block());
      writeValues(this.context.host, this.block(), values);
    });
  }

  getRange(): Range {
    return this.table.cells((whole) => ({ ...whole, row: whole.row + 1 + this.target, rowCount: 1 }));
  }
  delete(): void {
    this.getRange().delete("Up");
  }

  protected readers() {
    return { index: (index: number) => index, values: () => readValues(this.context.host, this.block()) };
  }

  private block(): SheetBlock {
    const whole = this.table.block();
    return { ...whole, row: whole.row + 1 + this.target, rowCount: 1 };
  }
}
