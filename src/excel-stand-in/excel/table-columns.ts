import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { Range } from "./range";
import type { StandsFor } from "./standing";
import type { Table } from "./table";

/** Stands in for Excel.TableColumnCollection. */
export class TableColumnCollection
  extends ClientCollection<TableColumn, string, Context>
  implements StandsFor<Excel.TableColumnCollection, "getItem" | "getItemAt" | "getItemOrNullObject" | "items" | "getCount">
{
  constructor(private readonly table: Table) {
    super(table.context, { name: "columns", missing: "null", find: () => (table.isNullObject ? undefined : table.target) });
  }

  /** By heading, or by position from 0. */
  getItem(key: number | string): TableColumn {
    return this.standIn(() => this.index(key), "throws");
  }
  getItemOrNullObject(key: number | string): TableColumn {
    return this.standIn(() => (this.isNullObject ? undefined : this.index(key)), "null");
  }
  getItemAt(index: number): TableColumn {
    return this.standIn(() => this.index(index), "throws");
  }

  protected list(): TableColumn[] {
    return Array.from({ length: this.table.block().columnCount }, (_, index) => this.standIn(() => index, "throws"));
  }

  private index(key: number | string): number | undefined {
    const { columnCount } = this.table.block();
    if (typeof key === "number") return key >= 0 && key < columnCount ? key : undefined;
    const found = Array.from({ length: columnCount }, (_, index) => headingAt(this.table, index).toLowerCase()).indexOf(key.toLowerCase());
    return found < 0 ? undefined : found;
  }

  private standIn(find: () => number | undefined, missing: "throws" | "null"): TableColumn {
    return new TableColumn(this.table, find, missing);
  }
}

/** Stands in for Excel.TableColumn; what it stands for is its position in the table. */
export class TableColumn
  extends ClientObject<number, Context>
  implements StandsFor<Excel.TableColumn, "index" | "name" | "values" | "getRange" | "getHeaderRowRange" | "getDataBodyRange">
{
  constructor(
    private readonly table: Table,
    find: () => number | undefined,
    missing: "throws" | "null",
  ) {
    super(table.context, { name: "column", missing, find });
  }

  get index(): number {
    return this.get("index");
  }
  get name(): string {
    return this.get("name");
  }
  get values(): Excel.TableColumn["values"] {
    return this.get("values");
  }

  getRange(): Range {
    return this.table.cells((whole) => ({ ...whole, column: whole.column + this.target, columnCount: 1 }));
  }
  getHeaderRowRange(): Range {
    return this.table.cells((whole) => ({ ...whole, column: whole.column + this.target, columnCount: 1, rowCount: 1 }));
  }
  getDataBodyRange(): Range {
    return this.table.cells((whole) => ({
      ...whole,
      row: whole.row + 1,
      rowCount: whole.rowCount - 1,
      column: whole.column + this.target,
      columnCount: 1,
    }));
  }

  protected readers() {
    return {
      index: (index: number) => index,
      name: (index: number) => headingAt(this.table, index),
      values: (index: number) => {
        const { sheetId, row, column, rowCount } = this.table.block();
        const { host } = this.context;
        return Array.from({ length: rowCount }, (_, offset) => [
          host.engine.spills.valueAt(host.unitId, sheetId, row + offset, column + index) ?? "",
        ]);
      },
    };
  }
}

function headingAt(table: Table, index: number): string {
  const { sheetId, row, column } = table.block();
  const { host } = table.context;
  return String(host.engine.spills.valueAt(host.unitId, sheetId, row, column + index) ?? "");
}
