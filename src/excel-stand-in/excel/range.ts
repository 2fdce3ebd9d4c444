import {
  DeleteRangeMoveLeftCommand,
  DeleteRangeMoveUpCommand,
  InsertRangeMoveDownCommand,
  InsertRangeMoveRightCommand,
  RemoveColCommand,
  RemoveRowCommand,
  InsertColCommand,
  InsertRowCommand,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { Direction } from "@univerjs/core";
import { absoluteAddress, cellsText, sheetPrefix, type Block } from "./address";
import { assertFormatsOpen, assertUnlocked, isUnlocked, writeCells, type SheetBlock } from "./cell-writer";
import { readFormulas, readNumberFormats, readTexts, readValueTypes, readValues, shaped, writeValues } from "./cell-values";
import { ConditionalFormatCollection } from "./conditional-formats";
import { DataValidation } from "./data-validation";
import { accessDenied, invalidArgument } from "./errors";
import { toGridRange } from "./grid-ranges";
import type { Host } from "./host";
import { fromLocal, toLocal } from "./locale";
import { RangeFormat } from "./range-format";
import { RangeNavigation } from "./range-navigation";
import type { StandsFor } from "./standing";

/** Stands in for Excel.Range. */
export class Range extends RangeNavigation implements StandsFor<Excel.Range, keyof Range> {
  readonly format = new RangeFormat(this);
  readonly dataValidation = new DataValidation(this);

  get conditionalFormats(): ConditionalFormatCollection {
    return this.part("conditionalFormats", () => new ConditionalFormatCollection(this));
  }
  declare readonly address: string;
  declare readonly rowIndex: number;
  declare readonly columnIndex: number;
  declare readonly rowCount: number;
  declare readonly columnCount: number;
  declare readonly text: string[][];
  declare readonly valueTypes: Excel.RangeValueType[][];
  declare values: Excel.Range["values"];
  declare formulas: Excel.Range["formulas"];
  declare formulasLocal: Excel.Range["formulasLocal"];
  declare numberFormat: Excel.Range["numberFormat"];

  select(): void {
    this.write((block) => {
      this.context.host.sheet(block.sheetId).activate();
      this.grid(block).activate();
    });
  }

  clear(applyTo: `${Excel.ClearApplyTo}` | Excel.ClearApplyTo = "All"): void {
    this.write((block) => {
      const { host } = this.context;
      const [contents, looks] = [applyTo !== "Formats", applyTo === "All" || applyTo === "Formats"];
      if (contents) assertUnlocked(host, block);
      if (looks) assertFormatsOpen(host, block);
      if (contents) writeCells(host, block, false, () => ({ v: null, f: null, si: null, p: null, t: null }));
      if (looks) writeCells(host, block, true, (row, column) => this.withoutLooks(block, row, column));
    });
  }

  merge(across = false): void {
    this.write((block) => {
      assertFormatsOpen(this.context.host, block);
      const cells = this.grid(block);
      withoutSelecting(this.context.host, () => (across ? cells.mergeAcross : cells.merge).call(cells, { isForceMerge: true }));
    });
  }

  insert(shift: "Down" | "Right" | Excel.InsertShiftDirection): Range {
    this.write((block) => {
      this.assertStructureOpen(block);
      const range = toGridRange(block);
      if (this.isWholeRows(block)) return this.command(InsertRowCommand.id, block, { range, direction: Direction.UP });
      if (this.isWholeColumns(block)) return this.command(InsertColCommand.id, block, { range, direction: Direction.LEFT });
      return this.command(shift === "Down" ? InsertRangeMoveDownCommand.id : InsertRangeMoveRightCommand.id, block, { range });
    });
    return this.derive((block) => block);
  }

  delete(shift: "Up" | "Left" | Excel.DeleteShiftDirection): void {
    this.write((block) => {
      this.assertStructureOpen(block);
      const range = toGridRange(block);
      if (this.isWholeRows(block)) return this.command(RemoveRowCommand.id, block, { range });
      if (this.isWholeColumns(block)) return this.command(RemoveColCommand.id, block, { range });
      return this.command(shift === "Up" ? DeleteRangeMoveUpCommand.id : DeleteRangeMoveLeftCommand.id, block, { range });
    });
  }

  /** For names and charts. */
  absoluteAddress(): string {
    return absoluteAddress(this.context.host.sheet(this.target.sheetId).getSheetName(), this.target);
  }

  protected override children() {
    return { format: () => this.format, dataValidation: () => this.dataValidation };
  }

  protected override changes() {
    return {
      formulasLocal: (formulas: unknown) => {
        const from = (formula: unknown): unknown =>
          Array.isArray(formula) ? formula.map(from) : typeof formula === "string" ? fromLocal(formula, this.context.host.locale) : formula;
        this.setCells("formulasLocal", formulas, from);
      },
      values: (values: unknown) => this.setCells("values", values),
      formulas: (formulas: unknown) => this.setCells("formulas", formulas),
      numberFormat: (formats: unknown) =>
        this.set("numberFormat", formats, (block) => {
          assertFormatsOpen(this.context.host, block);
          const patterns = shaped(formats, block);
          writeCells(this.context.host, block, true, (row, column) => patternCell(patterns[row]![column]));
        }),
    };
  }

  protected readers(): Record<string, (block: SheetBlock) => unknown> {
    const { host } = this.context;
    return {
      address: (block) => sheetPrefix(host.sheet(block.sheetId).getSheetName()) + cellsText(block, this.size(block)),
      rowIndex: (block) => block.row,
      columnIndex: (block) => block.column,
      rowCount: (block) => block.rowCount,
      columnCount: (block) => block.columnCount,
      values: (block) => readValues(host, block),
      formulas: (block) => readFormulas(host, block),
      formulasLocal: (block) =>
        readFormulas(host, block).map((row) =>
          row.map((formula) => (typeof formula === "string" ? toLocal(formula, host.locale) : formula)),
        ),
      numberFormat: (block) => readNumberFormats(host, block),
      text: (block) => readTexts(host, block),
      valueTypes: (block) => readValueTypes(host, block),
    };
  }

  private setCells(property: string, values: unknown, entered = (given: unknown): unknown => given): void {
    this.set(property, values, (block) => {
      assertUnlocked(this.context.host, block);
      writeValues(this.context.host, block, entered(values));
    });
  }

  protected derive(change: (block: SheetBlock) => Block): Range {
    return new Range(this.context, { name: this.locator.name, missing: "throws", find: () => inSheet(this.target, change(this.target)) });
  }

  protected deriveOrNull(change: (block: SheetBlock) => Block | undefined): Range {
    const find = (): SheetBlock | undefined => {
      const block = change(this.target);
      return block && inSheet(this.target, block);
    };
    return new Range(this.context, { name: this.locator.name, missing: "null", find });
  }

  private withoutLooks(block: SheetBlock, row: number, column: number) {
    const cell = this.context.host.gridSheet(block.sheetId).getCellRaw(block.row + row, block.column + column);
    if (!cell?.s && !isUnlocked(cell)) return undefined;
    return { s: null, ...(isUnlocked(cell) ? { custom: { ...cell!.custom, unlocked: false } } : {}) };
  }

  private assertStructureOpen(block: SheetBlock): void {
    if (this.context.host.extras.ofSheet(this.context.host.unitId, block.sheetId).protection) throw accessDenied();
  }

  private isWholeRows(block: SheetBlock): boolean {
    return block.columnCount >= this.size(block).columnCount;
  }
  private isWholeColumns(block: SheetBlock): boolean {
    return block.rowCount >= this.size(block).rowCount;
  }

  private grid(block: SheetBlock) {
    return this.context.host.sheet(block.sheetId).getRange(block.row, block.column, block.rowCount, block.columnCount);
  }

  private command(id: string, block: SheetBlock, params: object): Promise<void> {
    return this.context.host.lateCommand(id, { subUnitId: block.sheetId, ...params });
  }
}

function inSheet({ sheetId }: SheetBlock, block: Block): SheetBlock {
  if (block.row < 0 || block.column < 0 || block.rowCount < 1 || block.columnCount < 1)
    throw invalidArgument("The range lies outside the sheet.");
  return { row: block.row, column: block.column, rowCount: block.rowCount, columnCount: block.columnCount, sheetId };
}

/** The grid has the selected cell begin where it merges, and draws all anew for it; Excel's API leaves the selection alone. */
function withoutSelecting({ engine }: Host, run: () => void): void {
  const selections = engine.injector.get(SheetsSelectionsService);
  Object.defineProperty(selections, "setSelections", { configurable: true, value: () => undefined });
  try {
    run();
  } finally {
    delete (selections as Partial<typeof selections>).setSelections;
  }
}

const patternCell = (pattern: unknown) =>
  typeof pattern === "string" ? { s: { n: pattern === "General" ? null : { pattern } } } : undefined;
