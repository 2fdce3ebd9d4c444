import { SetSelectionsOperation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import type { FWorkbook } from "@univerjs/sheets/facade";
import { Application } from "./application";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { DocumentPropertiesObject } from "./document-properties";
import { EventHandlers } from "./events";
import { NamedItemCollection } from "./named-items";
import { NoteCollection } from "./notes";
import { fromGridRange } from "./grid-ranges";
import { Range } from "./range";
import type { StandsFor } from "./standing";
import { TableCollection } from "./tables";
import { WorkbookProtection } from "./workbook-protection";
import { SettingCollection } from "./workbook-settings";
import { WorksheetCollection } from "./worksheets";

/** Stands in for Excel.Workbook. */
export class Workbook extends ClientObject<FWorkbook, Context> implements StandsFor<Excel.Workbook, keyof Workbook> {
  readonly worksheets = new WorksheetCollection(this.context, {
    name: "worksheets",
    missing: "throws",
    find: () => this.context.host.workbook,
  });
  readonly tables = new TableCollection(this.context, { name: "tables", missing: "throws", find: () => ({ sheetId: undefined }) });
  readonly names = new NamedItemCollection(this.context, { name: "names", missing: "throws", find: () => ({ sheetId: undefined }) });
  readonly application = new Application(this.context, { name: "application", missing: "throws", find: () => true as const });
  readonly properties = new DocumentPropertiesObject(this.context, { name: "properties", missing: "throws", find: () => true as const });
  readonly protection = new WorkbookProtection(this.context, { name: "protection", missing: "throws", find: () => true as const });
  readonly settings = new SettingCollection(this.context, { name: "settings", missing: "throws", find: () => true as const });
  readonly onSelectionChanged = new EventHandlers<{ workbook: Workbook }>(this.context, {
    // As in Excel another sheet in front is another selection.
    after: (_host, { id }) => (id === SetSelectionsOperation.id || id === SetWorksheetActiveOperation.id ? [{ workbook: this }] : []),
  });

  get notes(): NoteCollection {
    this.since(18, "Workbook.notes");
    const find = () => ({ sheetId: undefined });
    return this.part("notes", () => new NoteCollection(this.context, { name: "notes", missing: "throws", find }));
  }

  getSelectedRange(): Range {
    return this.selected((range) => range);
  }

  getActiveCell(): Range {
    return this.selected((range) => ({ ...range, rowCount: 1, columnCount: 1 }));
  }

  private selected(pick: (block: ReturnType<typeof fromGridRange>) => ReturnType<typeof fromGridRange>): Range {
    const find = () => {
      const { workbook } = this.context.host;
      const range = workbook.getActiveRange();
      const sheetId = workbook.getActiveSheet().getSheetId();
      return pick(range ? fromGridRange(sheetId, range.getRange()) : { sheetId, row: 0, column: 0, rowCount: 1, columnCount: 1 });
    };
    return new Range(this.context, { name: "range", missing: "throws", find });
  }

  protected override children() {
    return {
      worksheets: () => this.worksheets,
      tables: () => this.tables,
      names: () => this.names,
      notes: () => this.notes,
      application: () => this.application,
      properties: () => this.properties,
      protection: () => this.protection,
      settings: () => this.settings,
    };
  }
}
