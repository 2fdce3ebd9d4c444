import "./paper.css";
import type { SheetExtras } from "../../../excel-stand-in/excel/sheet-extras";
import { fileNameFor } from "../naming/file-name";
import type { Session } from "../session";
import { layOut } from "./lay-out";

/**
 * Puts the sheet in front on paper whenever the browser prints, however it was asked: by our buttons, by Ctrl+P, by its own menu.
 * The grid is a canvas, so the page that is printed is one of our making: real tables, laid out just before printing and taken
 * away after it. All of it happens at once, since a browser waits for nobody when it prints.
 */
export class Paper {
  private readonly element = document.createElement("div");
  private readonly pageRule = document.createElement("style");
  private titleBefore: string | undefined;

  constructor(
    private readonly session: Session,
    private readonly extrasOf: (unitId: string, sheetId: string) => SheetExtras | undefined,
  ) {
    this.element.id = "paper";
    this.element.setAttribute("aria-hidden", "true");
    window.addEventListener("beforeprint", () => this.fill());
    window.addEventListener("afterprint", () => this.clear());
  }

  /** What is being typed is on the paper, and so is what it changes. */
  async print(): Promise<void> {
    await this.session.endTyping();
    await this.session.engine.calculated();
    window.print();
  }

  private fill(): void {
    this.clear();
    const { engine, unitId, name } = this.session;
    const sheet = engine.univerAPI.getActiveWorkbook()!.getActiveSheet();
    document.body.append(this.element);
    const { width, height } = layOut({
      engine,
      unitId,
      sheet,
      extras: this.extrasOf(unitId, sheet.getSheetId()) ?? {},
      workbookName: name,
      language: navigator.language,
      paper: this.element,
    });
    // Margins are ours, so that the browser adds no address and date of its own.
    this.pageRule.textContent = `@page { size: ${width}pt ${height}pt; margin: 0; }`;
    document.head.append(this.pageRule);
    // Browsers name the PDF after the page.
    this.titleBefore = document.title;
    document.title = fileNameFor(sheet.getSheetName() === name ? name : `${name} ${sheet.getSheetName()}`);
  }

  private clear(): void {
    this.element.replaceChildren();
    this.element.remove();
    this.pageRule.remove();
    if (this.titleBefore !== undefined) document.title = this.titleBefore;
    this.titleBefore = undefined;
  }
}
