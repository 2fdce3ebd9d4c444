import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { StandsFor } from "./standing";
import type { Table } from "./table";

/** Stands in for Excel.TableColumnCollection. */
export class TableColumnCollection
  extends ClientCollection<TableColumn, string, Context>
  implements StandsFor<Excel.TableColumnCollection, keyof TableColumnCollection>
{
  constructor(private readonly table: Table) {
    super(table.context, { name: "columns", missing: "null", find: () => (table.isNullObject ? undefined : table.target) });
  }

  protected list(): TableColumn[] {
    return Array.from({ length: this.table.block().columnCount }, (_, index) => new TableColumn(this.table, () => index));
  }
}

/** Stands in for Excel.TableColumn; what it stands for is its position in the table. */
export class TableColumn extends ClientObject<number, Context> implements StandsFor<Excel.TableColumn, keyof TableColumn> {
  constructor(
    private readonly table: Table,
    find: () => number | undefined,
  ) {
    super(table.context, { name: "column", missing: "throws", find });
  }

  declare readonly name: string;

  protected readers() {
    return { name: (index: number) => headingAt(this.table, index) };
  }
}

function headingAt(table: Table, index: number): string {
  const { sheetId, row, column } = table.block();
  const { host } = table.context;
  return String(host.engine.spills.valueAt(host.unitId, sheetId, row, column + index) ?? "");
}
