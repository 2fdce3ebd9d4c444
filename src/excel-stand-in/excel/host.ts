import type { Workbook as GridWorkbook, Worksheet as GridSheet } from "@univerjs/core";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import type { Engine } from "../engine/engine";
import { itemNotFound } from "./errors";
import { ExtrasStore } from "./extras-store";
import { Faults } from "./faults";
import { locales, type Locale } from "./locale";
import { lightTheme, type OfficeTheme } from "./office-theme";
import { theBestExcel, type Switches } from "./switches";

/** Whether somebody is typing in a cell: Excel refuses calls then, unless they were asked to wait. */
export interface CellEditing {
  active(): boolean;
  ended(): Promise<void>;
}

/** What the stand-in cannot do itself: the bench's page and the headless bench each have their own way. */
export interface FileAccess {
  /** The workbook as an .xlsx. */
  save(): Promise<Uint8Array>;
  /** Opens another workbook beside this one: an empty one, or these bytes. */
  openAnother(bytes: Uint8Array | undefined): Promise<void>;
}

const noFiles: FileAccess = {
  save: () => Promise.reject(new Error("This bench cannot save files.")),
  openAnother: () => Promise.reject(new Error("This bench cannot open another workbook.")),
};

/** What stands behind the Excel stand-in: the grid, the extras it cannot hold, and the switches for tests. */
export class Host {
  readonly faults = new Faults();
  readonly extras: ExtrasStore;
  cellEditing: CellEditing = { active: () => false, ended: () => Promise.resolve() };

  files: FileAccess = noFiles;
  theme: OfficeTheme = lightTheme;
  readonly switches: Readonly<Switches> = theBestExcel();

  /** What listens to events of the workbook. */
  readonly handlers = new Set<{ detach(): void }>();

  private last: Promise<unknown> = Promise.resolve();

  constructor(readonly engine: Engine) {
    this.extras = new ExtrasStore(engine.injector);
    engine.tableHasTotals = (...table) => this.extras.hasTotals(engine.injector, ...table);
  }

  /** When a pane's window closes, Excel tells its handlers nothing more. */
  forgetHandlers(): void {
    for (const handler of this.handlers) handler.detach();
  }

  /** Makes the stand-in worse, or better again: what is not named is as in the best Excel. */
  behave(switches: Partial<Switches>): void {
    Object.assign(this.switches, theBestExcel(), switches);
    this.engine.functions.unknown.now = this.switches.functionsUnknown;
  }

  get locale(): Locale {
    return locales[this.switches.locale];
  }

  /** One round trip at a time, as in Excel. */
  exclusive<T>(task: () => Promise<T>): Promise<T> {
    const turn = this.last.then(task, task);
    this.last = turn.catch(() => undefined);
    return turn;
  }

  get workbook(): FWorkbook {
    const workbook = this.engine.univerAPI.getActiveWorkbook();
    if (!workbook) throw itemNotFound("workbook");
    return workbook;
  }

  get unitId(): string {
    return this.workbook.getId();
  }

  get gridWorkbook(): GridWorkbook {
    return this.workbook.getWorkbook();
  }

  sheet(sheetId: string): FWorksheet {
    const sheet = this.workbook.getSheetBySheetId(sheetId);
    if (!sheet) throw itemNotFound("worksheet");
    return sheet;
  }

  gridSheet(sheetId: string): GridSheet {
    return this.sheet(sheetId).getSheet();
  }

  /** A command of the grid that finishes later, such as inserting cells. */
  async lateCommand(id: string, params: object): Promise<void> {
    if (!(await this.engine.univerAPI.executeCommand(id, { unitId: this.unitId, ...params }))) throw new Error(`The grid refused ${id}.`);
  }

  /** A command of the grid that finishes at once, as most do. */
  command(id: string, params: object): void {
    if (!this.engine.univerAPI.syncExecuteCommand(id, { unitId: this.unitId, ...params })) {
      throw new Error(`The grid refused ${id}.`);
    }
  }
}
