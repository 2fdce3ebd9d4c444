import { BooleanNumber } from "@univerjs/core";
import { CopySheetCommand, RemoveSheetCommand, SetTabColorCommand, SetWorksheetHideCommand, SetWorksheetNameCommand, SetWorksheetOrderCommand, SetWorksheetShowCommand, ToggleGridlinesCommand } from "@univerjs/sheets";
import { parseCells, type Block } from "./address";
import { ChartCollection } from "./charts";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { invalidArgument, itemNotFound } from "./errors";
import { FreezePanes } from "./freeze-panes";
import { NamedItemCollection } from "./named-items";
import { nameRange } from "./named-item";
import { NoteCollection } from "./notes";
import { PageBreakCollection } from "./page-breaks";
import { PageLayoutObject } from "./page-layout";
import { Range } from "./range";
import type { StandsFor } from "./standing";
import { TableCollection } from "./tables";
import { usedBlock } from "./used-block";
import { WorksheetProtection } from "./worksheet-protection";

type Members = "id" | "name" | "position" | "visibility" | "tabColor" | "showGridlines" | "activate" | "delete" | "copy" | "getRange"
  | "getRangeByIndexes" | "getCell" | "getUsedRange" | "getUsedRangeOrNullObject" | "names" | "tables" | "charts" | "notes" | "freezePanes"
  | "pageLayout" | "horizontalPageBreaks" | "protection" | "isNullObject" | "load";

/** Stands in for Excel.Worksheet; what it stands for is the grid's sheet id. */
export class Worksheet extends ClientObject<string, Context> implements StandsFor<Excel.Worksheet, Members> {
  get names(): NamedItemCollection { return this.part("names", () => new NamedItemCollection(this.context, { name: "names", missing: "null", find: () => this.scope() })); }
  get tables(): TableCollection { return this.part("tables", () => new TableCollection(this.context, { name: "tables", missing: "null", find: () => this.scope() })); }
  get notes(): NoteCollection { return this.part("notes", () => new NoteCollection(this.context, { name: "notes", missing: "null", find: () => this.scope() })); }
  get charts(): ChartCollection { return this.part("charts", () => new ChartCollection(this.context, this.own("charts"))); }
  get freezePanes(): FreezePanes { return this.part("freezePanes", () => new FreezePanes(this.context, this.own("freezePanes"))); }
  get pageLayout(): PageLayoutObject { return this.part("pageLayout", () => new PageLayoutObject(this.context, this.own("pageLayout"))); }
  get protection(): WorksheetProtection { return this.part("protection", () => new WorksheetProtection(this.context, this.own("protection"))); }
  get horizontalPageBreaks(): PageBreakCollection { return this.part("breaks", () => new PageBreakCollection(this.context, this.own("horizontalPageBreaks"))); }

  get id(): string { return this.get("id"); }
  get name(): string { return this.get("name"); }
  set name(name: string) { this.set("name", name, (id) => rename(this.context, id, name)); }
  get position(): number { return this.get("position"); }
  set position(position: number) { this.set("position", position, (id) => this.command(SetWorksheetOrderCommand.id, id, { order: position })); }
  get visibility(): Excel.Worksheet["visibility"] { return this.get("visibility"); }
  set visibility(visibility: Excel.Worksheet["visibility"]) {
    this.set("visibility", visibility, (id) => {
      if (this.context.host.sheet(id).isSheetHidden() === (visibility !== "Visible")) return;
      this.command(visibility === "Visible" ? SetWorksheetShowCommand.id : SetWorksheetHideCommand.id, id, {});
    });
  }
  get tabColor(): string { return this.get("tabColor"); }
  set tabColor(color: string) { this.set("tabColor", color, (id) => this.command(SetTabColorCommand.id, id, { value: color })); }
  get showGridlines(): boolean { return this.get("showGridlines"); }
  set showGridlines(show: boolean) {
    this.set("showGridlines", show, (id) => this.command(ToggleGridlinesCommand.id, id, { showGridlines: show ? BooleanNumber.TRUE : BooleanNumber.FALSE }));
  }

  activate(): void { this.write((id) => { this.context.host.sheet(id).activate(); }); }

  delete(): void {
    this.write((id) => {
      if (this.context.host.workbook.getSheets().length === 1) throw invalidArgument("A workbook needs a sheet.");
      this.command(RemoveSheetCommand.id, id, {});
    });
  }

  copy(positionType: `${Excel.WorksheetPositionType}` | Excel.WorksheetPositionType = "None", relativeTo?: Excel.Worksheet): Worksheet {
    let copyId: string | undefined;
    this.write((id) => { copyId = copySheet(this.context, id, positionType, relativeTo as unknown as Worksheet | undefined); });
    return new Worksheet(this.context, { name: "worksheet", missing: "throws", find: () => copyId });
  }

  /** "A1:B2", a name that this sheet can see, or nothing for all cells. */
  getRange(address?: string): Range {
    return this.range((id) => {
      const size = this.size(id);
      if (address === undefined) return { row: 0, column: 0, ...size };
      return nameRange(this.context.host, id, address) ?? parseCells(address.slice(address.lastIndexOf("!") + 1), size);
    });
  }

  getRangeByIndexes(row: number, column: number, rowCount: number, columnCount: number): Range {
    return this.range(() => ({ row, column, rowCount, columnCount }));
  }

  getCell(row: number, column: number): Range { return this.getRangeByIndexes(row, column, 1, 1); }

  getUsedRange(valuesOnly = false): Range {
    return this.range((id) => usedBlock(this.context.host, id, valuesOnly) ?? { row: 0, column: 0, rowCount: 1, columnCount: 1 });
  }

  getUsedRangeOrNullObject(valuesOnly = false): Range {
    const find = () => {
      const id = this.orNull();
      const block = id === undefined ? undefined : usedBlock(this.context.host, id, valuesOnly);
      return block && { ...block, sheetId: id! };
    };
    return new Range(this.context, { name: "range", missing: "null", find });
  }

  protected override children() {
    return { names: this.names, tables: this.tables, charts: this.charts, notes: this.notes, pageLayout: this.pageLayout, protection: this.protection };
  }

  protected readers() {
    const { host } = this.context;
    return {
      id: (id: string) => id,
      name: (id: string) => host.sheet(id).getSheetName(),
      position: (id: string) => host.sheet(id).getIndex(),
      visibility: (id: string) => (host.sheet(id).isSheetHidden() ? "Hidden" : "Visible"),
      tabColor: (id: string) => host.sheet(id).getTabColor() ?? "",
      showGridlines: (id: string) => !host.sheet(id).hasHiddenGridLines(),
    };
  }

  private range(find: (sheetId: string) => Block): Range {
    return new Range(this.context, { name: "range", missing: "throws", find: () => ({ sheetId: this.target, ...find(this.target) }) });
  }

  private orNull(): string | undefined { return this.isNullObject ? undefined : this.target; }

  private scope() {
    const sheetId = this.orNull();
    return sheetId === undefined ? undefined : { sheetId };
  }

  private own(name: string) { return { name, missing: "null" as const, find: () => this.orNull() }; }

  private size(sheetId: string) {
    const sheet = this.context.host.sheet(sheetId);
    return { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() };
  }

  private command(id: string, subUnitId: string, params: object): void { this.context.host.command(id, { subUnitId, ...params }); }
}

function rename(context: Context, id: string, name: string): void {
  const clash = context.host.workbook.getSheets().some((sheet) => sheet.getSheetId() !== id && sheet.getSheetName().toLowerCase() === name.toLowerCase());
  if (clash || name === "" || name.length > 31 || /[\\/?*[\]:]/u.test(name)) throw invalidArgument(`"${name}" cannot be a sheet's name here.`);
  if (context.host.sheet(id).getSheetName() !== name) context.host.command(SetWorksheetNameCommand.id, { subUnitId: id, name });
}

/** Names the copy as Excel does: "Batch 1 (2)". */
function copySheet(context: Context, id: string, positionType: string, relativeTo: Worksheet | undefined): string {
  const { workbook } = context.host;
  const before = new Set(workbook.getSheets().map((sheet) => sheet.getSheetId()));
  const active = workbook.getActiveSheet();
  context.host.command(CopySheetCommand.id, { subUnitId: id });
  const copy = workbook.getSheets().find((sheet) => !before.has(sheet.getSheetId()));
  if (!copy) throw itemNotFound("worksheet");
  const taken = new Set(workbook.getSheets().map((sheet) => sheet.getSheetName()));
  let number = 2;
  while (taken.has(`${context.host.sheet(id).getSheetName()} (${number})`)) number++;
  rename(context, copy.getSheetId(), `${context.host.sheet(id).getSheetName()} (${number})`);
  context.host.command(SetWorksheetOrderCommand.id, { subUnitId: copy.getSheetId(), order: targetIndex(context, copy.getIndex(), positionType, relativeTo) });
  active.activate();
  return copy.getSheetId();
}

function targetIndex(context: Context, index: number, positionType: string, relativeTo: Worksheet | undefined): number {
  const last = context.host.workbook.getSheets().length - 1;
  if (positionType === "Beginning") return 0;
  if (positionType === "End") return last;
  if (!relativeTo) return index;
  const other = context.host.sheet(relativeTo.target).getIndex();
  const after = positionType === "After" ? other + 1 : other;
  return index < after ? after - 1 : after;
}
