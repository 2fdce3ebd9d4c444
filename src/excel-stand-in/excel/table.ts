import { DeleteSheetTableCommand, SetSheetTableCommand, TableManager } from "@univerjs/sheets-table";
import { assertFormatsOpen, writeCells, type SheetBlock } from "./cell-writer";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { itemNotFound, invalidArgument } from "./errors";
import { fromGridRange } from "./grid-ranges";
import { Range } from "./range";
import type { TableLook } from "./sheet-extras";
import type { StandsFor } from "./standing";
import { TableColumnCollection } from "./table-columns";

type GridTable = NonNullable<ReturnType<TableManager["getTableById"]>>;

/**
 * Stands in for Excel.Table; what it stands for is the grid's table id. Looks that the grid has no place for are kept in
 * the sheet's extras. The grid's range leaves a totals row out (it would make totals circular), `getRange` includes it.
 */
export class Table extends ClientObject<string, Context> implements StandsFor<Excel.Table, keyof Table> {
  get columns(): TableColumnCollection {
    return this.part("columns", () => new TableColumnCollection(this));
  }

  declare name: string;
  declare style: string;
  declare showBandedRows: boolean;
  declare showFilterButton: boolean;
  declare showHeaders: boolean;
  declare showTotals: boolean;

  getRange(): Range {
    return this.cells((whole) => ({ ...whole, rowCount: whole.rowCount + (this.looks().showTotals ? 1 : 0) }));
  }
  getDataBodyRange(): Range {
    return this.cells((whole) => ({ ...whole, row: whole.row + 1, rowCount: whole.rowCount - 1 }));
  }

  /** Takes the cells' contents with it, as in Excel. */
  delete(): void {
    this.remove((id) => {
      const block = this.block();
      this.context.host.command(DeleteSheetTableCommand.id, { subUnitId: block.sheetId, tableId: id });
      writeCells(this.context.host, block, false, () => ({ v: null, f: null, si: null, p: null, t: null }));
    });
  }

  private cells(pick: (whole: SheetBlock) => SheetBlock): Range {
    return new Range(this.context, { name: "range", missing: "throws", find: () => pick(this.block()) });
  }

  grid(): GridTable {
    const table = this.context.host.engine.injector.get(TableManager).getTableById(this.context.host.unitId, this.target);
    if (!table) throw itemNotFound("table");
    return table;
  }

  /** Headings and data, without the totals row. */
  block(): SheetBlock {
    const range = this.grid().getRange();
    return fromGridRange(this.grid().getSubunitId(), range);
  }

  protected override children() {
    return { columns: () => this.columns };
  }

  protected override changes() {
    return {
      name: (name: string) => this.set("name", name, () => this.rename(name)),
      style: (style: string) => this.look("style", style),
      showBandedRows: (show: boolean) => this.look("showBandedRows", show),
      showFilterButton: (show: boolean) => this.look("showFilterButton", show),
      showHeaders: (show: boolean) => this.look("showHeaders", show),
      showTotals: (show: boolean) => this.look("showTotals", show),
    };
  }

  protected readers() {
    return {
      name: () => this.grid().getDisplayName(),
      style: () => this.looks().style ?? "TableStyleMedium2",
      showBandedRows: () => this.looks().showBandedRows ?? true,
      showFilterButton: () => this.looks().showFilterButton ?? true,
      showHeaders: () => this.looks().showHeaders ?? true,
      showTotals: () => this.looks().showTotals ?? false,
    };
  }

  private looks(): TableLook {
    return this.context.host.extras.ofSheet(this.context.host.unitId, this.grid().getSubunitId()).tables?.[this.target] ?? {};
  }

  private look(property: keyof TableLook, value: string | boolean): void {
    this.set(property, value, (id) => {
      const sheetId = this.grid().getSubunitId();
      assertFormatsOpen(this.context.host, this.block());
      this.context.host.extras.update(this.context.host.unitId, sheetId, (extras) => {
        extras.tables = { ...extras.tables, [id]: { ...extras.tables?.[id], [property]: value } };
      });
    });
  }

  private rename(name: string): void {
    const manager = this.context.host.engine.injector.get(TableManager);
    const clash = manager
      .getTableList(this.context.host.unitId)
      .some((table) => table.id !== this.target && table.name.toLowerCase() === name.toLowerCase());
    if (clash || !/^[\p{L}_\\][\p{L}\p{N}_.]*$/u.test(name)) throw invalidArgument(`"${name}" cannot be a table's name here.`);
    this.context.host.command(SetSheetTableCommand.id, { tableId: this.target, name });
  }
}
