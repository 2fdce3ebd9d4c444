import { generateRandomId } from "@univerjs/core";
import { InsertSheetCommand } from "@univerjs/sheets";
import type { FWorkbook } from "@univerjs/sheets/facade";
import { sheetChanged } from "./changed-event";
import { ClientCollection } from "./collection";
import type { Context } from "./context";
import { RichApiError } from "./errors";
import { EventHandlers, type EventSource } from "./events";
import { assertWorkbookOpen } from "./sheet-commands";
import { sheetActivated, sheetAdded, sheetCalculated, sheetDeactivated, sheetDeleted, sheetMoved, sheetNameChanged } from "./sheet-events";
import type { StandsFor } from "./standing";
import { Worksheet } from "./worksheet";

/** Stands in for Excel.WorksheetCollection. */
export class WorksheetCollection
  extends ClientCollection<Worksheet, FWorkbook, Context>
  implements StandsFor<Excel.WorksheetCollection, keyof WorksheetCollection>
{
  readonly onActivated = new EventHandlers(this.context, sheetActivated);
  readonly onDeactivated = new EventHandlers(this.context, sheetDeactivated);
  readonly onAdded = new EventHandlers(this.context, sheetAdded);
  readonly onDeleted = new EventHandlers(this.context, sheetDeleted);
  readonly onCalculated = new EventHandlers(this.context, sheetCalculated);
  readonly onChanged = new EventHandlers(this.context, sheetChanged);

  get onNameChanged() {
    return this.newerEvent("onNameChanged", sheetNameChanged);
  }
  get onMoved() {
    return this.newerEvent("onMoved", sheetMoved);
  }

  add(name?: string): Worksheet {
    const id = generateRandomId();
    this.write((workbook) => {
      assertWorkbookOpen(this.context.host);
      const taken = workbook.getSheets().some((sheet) => sheet.getSheetName().toLowerCase() === name?.toLowerCase());
      if (taken) throw new RichApiError("ItemAlreadyExists", "A resource with the same name or identifier already exists.");
      const active = workbook.getActiveSheet();
      this.context.host.command(InsertSheetCommand.id, { sheet: { id, name: name ?? freeName(workbook), ...newSheetSize } });
      // Excel leaves the sheet in front that was there; the grid shows the new one.
      if (workbook.getActiveSheet().getSheetId() !== active.getSheetId()) active.activate();
    });
    return this.standIn(() => id);
  }

  getItem(key: string): Worksheet {
    return this.standIn((workbook) => sheetByKey(workbook, key));
  }
  getItemOrNullObject(key: string): Worksheet {
    return this.standIn((workbook) => sheetByKey(workbook, key), "null");
  }
  getActiveWorksheet(): Worksheet {
    return this.standIn((workbook) => workbook.getActiveSheet().getSheetId());
  }
  getFirst(): Worksheet {
    return this.standIn((workbook) => workbook.getSheets()[0]?.getSheetId());
  }

  private newerEvent<Args>(name: string, source: EventSource<Args>): EventHandlers<Args> {
    this.since(17, `WorksheetCollection.${name}`);
    return this.part(name, () => new EventHandlers(this.context, source));
  }

  protected list(workbook: FWorkbook): Worksheet[] {
    return workbook.getSheets().map((sheet) => this.standIn(() => sheet.getSheetId()));
  }

  private standIn(find: (workbook: FWorkbook) => string | undefined, missing: "throws" | "null" = "throws"): Worksheet {
    return new Worksheet(this.context, { name: "worksheet", missing, find: () => find(this.target) });
  }
}

/** Excel's sheets are far larger; this is room enough for formulas that spill to the right of what was written. */
const newSheetSize = { rowCount: 1000, columnCount: 60 };

/** By name or by id; names without regard to case. */
const sheetByKey = (workbook: FWorkbook, key: string): string | undefined =>
  workbook
    .getSheets()
    .find((sheet) => sheet.getSheetId() === key || sheet.getSheetName().toLowerCase() === key.toLowerCase())
    ?.getSheetId();

function freeName(workbook: FWorkbook): string {
  const taken = new Set(workbook.getSheets().map((sheet) => sheet.getSheetName()));
  let number = 1;
  while (taken.has(`Sheet${number}`)) number++;
  return `Sheet${number}`;
}
