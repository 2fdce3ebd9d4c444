import type { IWorkbookData } from "@univerjs/core";
import type { Engine } from "../../excel-stand-in/engine/engine";
import { openWorkbook, saveWorkbook, type Carry } from "../../excel-stand-in/xlsx";
import { watchChanges } from "./changes";
import { collectComputed } from "../../excel-stand-in/computed";
import type { WorkbookState } from "./keep/kept-workbook";
import { giveRoomToNewSheets, withRoom } from "./room";

/** What a workbook is called that nobody has named. */
export const emptyName = "Workbook";

const nameField = () => document.getElementById("workbook-name") as HTMLInputElement;

/** The workbook that is open in the grid, with its name and with what its file had beyond the grid. */
export class Session {
  /** Whether anything was changed by hand or by the pane since the workbook was opened or saved as a file. */
  edited = false;
  private carry: Carry | undefined;
  private watching = false;
  private readonly openedListeners: (() => void)[] = [];
  private readonly changedListeners: (() => void)[] = [];

  constructor(readonly engine: Engine) {
    nameField().addEventListener("input", () => {
      this.showTitle();
      this.noteEdit();
    });
  }

  get name(): string {
    return nameField().value.trim() || emptyName;
  }

  /** Calls it after what is in it; that is no edit. */
  nameByContent(name: string): void {
    nameField().value = name;
    this.showTitle();
    this.noteChange();
  }

  get unitId(): string {
    return this.engine.univerAPI.getActiveWorkbook()!.getId();
  }

  /** Called after each workbook that is opened. */
  onOpened(listener: () => void): void {
    this.openedListeners.push(listener);
  }

  /** Called after every edit and every new result. */
  onChanged(listener: () => void): void {
    this.changedListeners.push(listener);
  }

  async open({ name, snapshot, carry, sheetInFront }: WorkbookState): Promise<void> {
    // An editor left open would outlive its workbook and hold the keyboard.
    await this.engine.univerAPI.getActiveWorkbook()?.abortEditingAsync();
    this.engine.openWorkbook(withRoom(snapshot));
    this.bringToFront(sheetInFront);
    this.watch();
    this.carry = carry;
    nameField().value = name;
    this.showTitle();
    this.forgetEdits();
    for (const listener of this.openedListeners) listener();
    this.noteChange();
  }

  openEmpty(): Promise<void> {
    return this.open({ name: emptyName, snapshot: emptyWorkbook() });
  }

  /**
   * A file that is refused, by its reader or by the grid, leaves the workbook that is open as it was.
   * @returns sentences for the person about what of the file is not what it was
   */
  async openFile(bytes: Uint8Array, fileName: string): Promise<string[]> {
    const name = fileName.replace(/\.xlsx$/iu, "");
    const functionNames = [...this.engine.functions.functions.values()].map((metadata) => metadata.name);
    const { snapshot, carry, sheetInFront, remarks } = await openWorkbook(bytes, { id: newId(), name, functionNames });
    const before = this.engine.univerAPI.getActiveWorkbook() ? { ...this.state(), edited: this.edited } : undefined;
    try {
      await this.open({ name, snapshot, carry, sheetInFront });
    } catch (problem) {
      if (before) await this.open(before);
      this.edited = before?.edited ?? false;
      throw problem;
    }
    return remarks;
  }

  state(): WorkbookState {
    return { name: this.name, snapshot: this.snapshot(), carry: this.carry, sheetInFront: this.sheetInFront };
  }

  /** What is being typed into a cell belongs to the workbook, also for a person who goes to a button without Enter. */
  async endTyping(): Promise<void> {
    await this.engine.univerAPI.getActiveWorkbook()!.endEditingAsync(true);
  }

  /** @param savedAsText told of each formula that no spreadsheet program could read */
  async toFile(savedAsText: (address: string) => void = () => undefined): Promise<Uint8Array> {
    await this.endTyping();
    await this.engine.calculated();
    const snapshot = this.snapshot();
    return saveWorkbook(snapshot, collectComputed(this.engine, snapshot), this.carry, { sheetInFront: this.sheetInFront, savedAsText });
  }

  forgetEdits(): void {
    this.edited = false;
  }

  /** For what changes outside the grid, too: the workbook's name, its charts. */
  readonly noteEdit = (): void => {
    this.edited = true;
    this.noteChange();
  };

  private get sheetInFront(): string {
    return this.engine.univerAPI.getActiveWorkbook()!.getActiveSheet().getSheetId();
  }

  private snapshot(): IWorkbookData {
    return this.engine.univerAPI.getActiveWorkbook()!.save();
  }

  /** Without an id, or with that of a sheet that is gone, the first one stays in front. */
  private bringToFront(sheetId: string | undefined): void {
    const workbook = this.engine.univerAPI.getActiveWorkbook();
    const sheet = sheetId === undefined ? undefined : workbook?.getSheetBySheetId(sheetId);
    if (sheet) workbook?.setActiveSheet(sheet);
  }

  /** The grid's services exist once a first workbook is open. */
  private watch(): void {
    if (this.watching) return;
    this.watching = true;
    giveRoomToNewSheets(this.engine.injector);
    watchChanges(this.engine.injector, { edited: this.noteEdit, recalculated: () => this.noteChange() });
    // Which sheet is in front is no edit, but worth keeping.
    const { univerAPI } = this.engine;
    univerAPI.addEvent(univerAPI.Event.ActiveSheetChanged, () => this.noteChange());
  }

  private noteChange(): void {
    for (const listener of this.changedListeners) listener();
  }

  private showTitle(): void {
    document.title = `${this.name} – Gylebook bench`;
  }
}

/** What the grid remembers by id must not pass from one workbook to the next. */
const newId = () => `workbook-${[...crypto.getRandomValues(new Uint32Array(4))].map((part) => part.toString(36)).join("")}`;

function emptyWorkbook(): IWorkbookData {
  return { id: newId(), sheetOrder: ["sheet-1"], sheets: { "sheet-1": { id: "sheet-1", name: "Sheet 1" } } } as unknown as IWorkbookData;
}
