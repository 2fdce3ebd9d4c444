import { BooleanNumber } from "@univerjs/core";
import { RemoveSheetCommand, SetTabColorCommand, ToggleGridlinesCommand } from "@univerjs/sheets";
import { parseCells, type Block } from "./address";
import { ChartCollection } from "./charts";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { invalidArgument } from "./errors";
import { FreezePanes } from "./freeze-panes";
import { NamedItemCollection } from "./named-items";
import { nameRange } from "./named-item";
import { NoteCollection } from "./notes";
import { PageBreakCollection } from "./page-breaks";
import { PageLayoutObject } from "./page-layout";
import { Range } from "./range";
import { assertWorkbookOpen, copySheet, moveSheet, renameSheet, showOrHide, visibilityOf } from "./sheet-commands";
import type { StandsFor } from "./standing";
import { TableCollection } from "./tables";
import { usedBlock } from "./used-block";
import { WorksheetProtection } from "./worksheet-protection";

/** Stands in for Excel.Worksheet; what it stands for is the grid's sheet id. */
export class Worksheet extends ClientObject<string, Context> implements StandsFor<Excel.Worksheet, keyof Worksheet> {
  get names(): NamedItemCollection {
    return this.part("names", () => new NamedItemCollection(this.context, { name: "names", missing: "null", find: () => this.scope() }));
  }
  get tables(): TableCollection {
    return this.part("tables", () => new TableCollection(this.context, { name: "tables", missing: "null", find: () => this.scope() }));
  }
  get notes(): NoteCollection {
    this.since(18, "Worksheet.notes");
    return this.part("notes", () => new NoteCollection(this.context, { name: "notes", missing: "null", find: () => this.scope() }));
  }
  get charts(): ChartCollection {
    return this.part("charts", () => new ChartCollection(this.context, this.own("charts")));
  }
  get freezePanes(): FreezePanes {
    return this.part("freezePanes", () => new FreezePanes(this.context, this.own("freezePanes")));
  }
  get pageLayout(): PageLayoutObject {
    return this.part("pageLayout", () => new PageLayoutObject(this.context, this.own("pageLayout")));
  }
  get protection(): WorksheetProtection {
    return this.part("protection", () => new WorksheetProtection(this.context, this.own("protection")));
  }
  get horizontalPageBreaks(): PageBreakCollection {
    return this.part("breaks", () => new PageBreakCollection(this.context, this.own("horizontalPageBreaks")));
  }

  declare readonly id: string;
  declare name: string;
  declare position: number;
  declare visibility: Excel.Worksheet["visibility"];
  declare tabColor: string;
  declare showGridlines: boolean;

  activate(): void {
    this.write((id) => {
      this.context.host.sheet(id).activate();
    });
  }

  delete(): void {
    this.remove((id) => {
      assertWorkbookOpen(this.context.host);
      const others = this.context.host.workbook.getSheets().filter((sheet) => sheet.getSheetId() !== id);
      if (others.every((sheet) => sheet.isSheetHidden())) throw invalidArgument("A workbook must show a sheet.");
      this.context.forGood("Worksheet.delete", () => this.command(RemoveSheetCommand.id, id, {}));
    });
  }

  copy(positionType: `${Excel.WorksheetPositionType}` | Excel.WorksheetPositionType = "None", relativeTo?: Excel.Worksheet): Worksheet {
    let copyId: string | undefined;
    this.write((id) => {
      copyId = this.context.forGood("Worksheet.copy", () =>
        copySheet(this.context, id, positionType, relativeTo as unknown as Worksheet | undefined),
      );
    });
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

  getCell(row: number, column: number): Range {
    return this.getRangeByIndexes(row, column, 1, 1);
  }

  getUsedRange(valuesOnly = false): Range {
    this.context.read(() => undefined); // what spills is known when the writes before are calculated
    return this.range((id) => usedBlock(this.context.host, id, valuesOnly) ?? { row: 0, column: 0, rowCount: 1, columnCount: 1 });
  }

  getUsedRangeOrNullObject(valuesOnly = false): Range {
    this.context.read(() => undefined);
    const find = () => {
      const id = this.orNull();
      const block = id === undefined ? undefined : usedBlock(this.context.host, id, valuesOnly);
      return block && { ...block, sheetId: id! };
    };
    return new Range(this.context, { name: "range", missing: "null", find });
  }

  protected override children() {
    return {
      names: () => this.names,
      tables: () => this.tables,
      charts: () => this.charts,
      notes: () => this.notes,
      pageLayout: () => this.pageLayout,
      protection: () => this.protection,
    };
  }

  protected override changes() {
    return {
      name: (name: string) => this.setForGood("name", name, (id) => renameSheet(this.context, id, name)),
      position: (position: number) => this.setForGood("position", position, (id) => moveSheet(this.context, id, position)),
      visibility: (visibility: Excel.Worksheet["visibility"]) =>
        this.setForGood("visibility", visibility, (id) => showOrHide(this.context, id, visibility)),
      tabColor: (color: string) => this.set("tabColor", color, (id) => this.command(SetTabColorCommand.id, id, { value: color })),
      showGridlines: (show: boolean) =>
        this.set("showGridlines", show, (id) =>
          this.command(ToggleGridlinesCommand.id, id, { showGridlines: show ? BooleanNumber.TRUE : BooleanNumber.FALSE }),
        ),
    };
  }

  protected readers() {
    const { host } = this.context;
    return {
      id: (id: string) => id,
      name: (id: string) => host.sheet(id).getSheetName(),
      position: (id: string) => host.sheet(id).getIndex(),
      visibility: (id: string) => visibilityOf(host, id),
      tabColor: (id: string) => host.sheet(id).getTabColor() ?? "",
      showGridlines: (id: string) => !host.sheet(id).hasHiddenGridLines(),
    };
  }

  private setForGood(property: "name" | "position" | "visibility", value: unknown, apply: (id: string) => void): void {
    this.set(property, value, (id) => this.context.forGood(`Worksheet.${property}`, () => apply(id)));
  }

  private range(find: (sheetId: string) => Block): Range {
    return new Range(this.context, { name: "range", missing: "throws", find: () => ({ sheetId: this.target, ...find(this.target) }) });
  }

  private orNull(): string | undefined {
    return this.isNullObject ? undefined : this.target;
  }

  private scope() {
    const sheetId = this.orNull();
    return sheetId === undefined ? undefined : { sheetId };
  }

  private own(name: string) {
    return { name, missing: "null" as const, find: () => this.orNull() };
  }

  private size(sheetId: string) {
    const sheet = this.context.host.sheet(sheetId);
    return { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() };
  }

  private command(id: string, subUnitId: string, params: object): void {
    this.context.host.command(id, { subUnitId, ...params });
  }
}
