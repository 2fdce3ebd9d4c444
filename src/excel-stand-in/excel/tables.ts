import { generateRandomId } from "@univerjs/core";
import { AddSheetTableCommand, TableManager } from "@univerjs/sheets-table";
import { assertFormatsOpen, type SheetBlock } from "./cell-writer";
import { ClientCollection } from "./collection";
import type { Context } from "./context";
import { invalidArgument, RichApiError } from "./errors";
import type { Scope } from "./named-items";
import { overlap, toGridRange } from "./grid-ranges";
import type { Range } from "./range";
import { scopedBlock } from "./scoped-block";
import type { StandsFor } from "./standing";
import { Table } from "./table";
import { writeValues } from "./cell-values";

/** Stands in for Excel.TableCollection of a sheet or of the workbook. The grid draws a table's name over the row above it. */
export class TableCollection
  extends ClientCollection<Table, Scope, Context>
  implements StandsFor<Excel.TableCollection, keyof TableCollection>
{
  add(address: Range | Excel.Range | string, hasHeaders: boolean): Table {
    const id = generateRandomId();
    this.write(() => this.create(id, scopedBlock(this.context.host, this.target, address as Range | string), hasHeaders));
    return this.standIn(() => id, "throws");
  }

  getItem(key: string): Table {
    return this.standIn(() => this.find(key), "throws");
  }
  getItemOrNullObject(key: string): Table {
    return this.standIn(() => (this.isNullObject ? undefined : this.find(key)), "null");
  }

  protected list(): Table[] {
    return this.ids().map((id) => this.standIn(() => id, "throws"));
  }

  private create(id: string, block: SheetBlock, hasHeaders: boolean): void {
    const { host } = this.context;
    assertFormatsOpen(host, block);
    if (!hasHeaders) throw invalidArgument("The bench makes tables over a header row only.");
    const manager = host.engine.injector.get(TableManager);
    const grid = toGridRange(block);
    if (manager.getTablesBySubunitId(host.unitId, block.sheetId).some((table) => overlap(table.getRange(), grid)))
      throw new RichApiError("InvalidArgument", "A table can't overlap another table.");
    this.fillBlankHeaders(block);
    host.command(AddSheetTableCommand.id, { subUnitId: block.sheetId, id, name: freeTableName(manager, host.unitId), range: grid });
  }

  /** Excel writes "Column1" and so on into blank headings. */
  private fillBlankHeaders(block: SheetBlock): void {
    const { host } = this.context;
    const heads = Array.from({ length: block.columnCount }, (_, index) =>
      host.engine.spills.valueAt(host.unitId, block.sheetId, block.row, block.column + index),
    );
    if (heads.every((head) => head !== null)) return;
    writeValues(host, { ...block, rowCount: 1 }, [heads.map((head, index) => head ?? `Column${index + 1}`)]);
  }

  private ids(): string[] {
    const { host } = this.context;
    const sheetIds =
      this.target.sheetId === undefined ? host.workbook.getSheets().map((sheet) => sheet.getSheetId()) : [this.target.sheetId];
    return sheetIds
      .flatMap((sheetId) => host.engine.injector.get(TableManager).getTablesBySubunitId(host.unitId, sheetId))
      .map((table) => table.getId());
  }

  private find(key: string): string | undefined {
    const manager = this.context.host.engine.injector.get(TableManager);
    return this.ids().find(
      (id) => id === key || manager.getTableById(this.context.host.unitId, id)?.getDisplayName().toLowerCase() === key.toLowerCase(),
    );
  }

  private standIn(find: () => string | undefined, missing: "throws" | "null"): Table {
    return new Table(this.context, { name: "table", missing, find });
  }
}

function freeTableName(manager: TableManager, unitId: string): string {
  const taken = new Set(manager.getTableList(unitId).map((table) => table.name.toLowerCase()));
  let number = 1;
  while (taken.has(`table${number}`)) number++;
  return `Table${number}`;
}
