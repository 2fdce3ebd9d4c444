import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { Range } from "./range";
import type { StandsFor } from "./standing";
import type { Table } from "./table";

/** Stands in for Excel.TableColumnCollection. */
export class TableColumnCollection
  extends ClientCollection<TableColumn, string, Context>
  implements StandsFor<Excel.TableColumnCollection, "getItem" | "items" | "getCount">
{
  constructor(private readonly table: Table) {
    super(table.context, { name: "columns", missing: "null", find: () => (table.isNullObject ? undefined : table.target) });
  }

  /** By heading, or by position from 0. */
  getItem(key: number | string): TableColumn {
    return new TableColumn(this.table, () => this.index(key));
  }

  protected list(): TableColumn[] {
    return Array.from({ length: this.table.block().columnCount }, (_, index) => new TableColumn(this.table, () => index));
  }

  private index(key: number | string): number | undefined {
    const { columnCount } = this.table.block();
    if (typeof key === "number") return key >= 0 && key < columnCount ? key : undefined;
    const found = Array.from({ length: columnCount }, (_, index) => headingAt(this.table, index).toLowerCase()).indexOf(key.toLowerCase());
    return found < 0 ? undefined : found;
  }
}

/** Stands in for Excel.TableColumn; what it stands for is its position in the table. */
export class TableColumn extends ClientObject<number, Context> implements StandsFor<Excel.TableColumn, "name" | "getDataBodyRange"> {
  constructor(
    private readonly table: Table,
    find: () => number | undefined,
  ) {
    super(table.context, { name: "column", missing: "throws", find });
  }

  declare readonly name: string;

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
    return { name: (index: number) => headingAt(this.table, index) };
  }
}

function headingAt(table: Table, index: number): string {
  const { sheetId, row, column } = table.block();
  const { host } = table.context;
  return String(host.engine.spills.valueAt(host.unitId, sheetId, row, column + index) ?? "");
}
