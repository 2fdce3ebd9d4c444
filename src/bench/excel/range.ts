import { DeleteRangeMoveLeftCommand, DeleteRangeMoveUpCommand, InsertRangeMoveDownCommand, InsertRangeMoveRightCommand, RemoveColCommand, RemoveRowCommand, InsertColCommand, InsertRowCommand } from "@univerjs/sheets";
import { Direction } from "@univerjs/core";
import { absoluteAddress, cellsText, parseCells, sheetPrefix, type Block } from "./address";
import { assertFormatsOpen, assertUnlocked, isUnlocked, mapCells, writeCells, type SheetBlock } from "./cell-writer";
import { readFormulas, readNumberFormats, readTexts, readValueTypes, readValues, shaped, writeValues } from "./cell-values";
import { ClientObject } from "./client-object";
import { ConditionalFormatCollection } from "./conditional-formats";
import type { Context } from "./context";
import { DataValidation } from "./data-validation";
import { accessDenied, invalidArgument } from "./errors";
import { boundingBlock, sharedBlock, toGridRange } from "./grid-ranges";
import { RangeFormat } from "./range-format";
import type { StandsFor } from "./standing";
import { Worksheet } from "./worksheet";

type Members =
  | "address" | "rowIndex" | "columnIndex" | "rowCount" | "columnCount" | "cellCount" | "values" | "formulas" | "text" | "numberFormat"
  | "valueTypes" | "hasSpill" | "load" | "select" | "clear" | "merge" | "unmerge" | "getCell" | "getOffsetRange" | "getResizedRange"
  | "getEntireRow" | "getEntireColumn" | "getRow" | "getColumn" | "getLastRow" | "insert" | "delete" | "worksheet" | "format"
  | "dataValidation" | "conditionalFormats" | "getSpillingToRangeOrNullObject" | "isNullObject" | "getAbsoluteResizedRange"
  | "getBoundingRect" | "getIntersectionOrNullObject";

/** Stands in for Excel.Range. */
export class Range extends ClientObject<SheetBlock, Context> implements StandsFor<Excel.Range, Members> {
  readonly format = new RangeFormat(this);
  readonly dataValidation = new DataValidation(this);

  get conditionalFormats(): ConditionalFormatCollection { return this.part("conditionalFormats", () => new ConditionalFormatCollection(this)); }
  get worksheet(): Worksheet { return this.part("worksheet", () => new Worksheet(this.context, { name: "worksheet", missing: "throws", find: () => this.target.sheetId })); }
  get address(): string { return this.get("address"); }
  get rowIndex(): number { return this.get("rowIndex"); }
  get columnIndex(): number { return this.get("columnIndex"); }
  get rowCount(): number { return this.get("rowCount"); }
  get columnCount(): number { return this.get("columnCount"); }
  get cellCount(): number { return this.get("cellCount"); }
  get text(): string[][] { return this.get("text"); }
  get valueTypes(): Excel.RangeValueType[][] { return this.get("valueTypes"); }
  get hasSpill(): boolean { return this.get("hasSpill"); }
  get values(): Excel.Range["values"] { return this.get("values"); }
  get formulas(): Excel.Range["formulas"] { return this.get("formulas"); }
  get numberFormat(): Excel.Range["numberFormat"] { return this.get("numberFormat"); }
  set values(values: unknown) { this.setCells("values", values); }
  set formulas(formulas: unknown) { this.setCells("formulas", formulas); }
  set numberFormat(formats: unknown) {
    this.set("numberFormat", formats, (block) => {
      assertFormatsOpen(this.context.host, block);
      const patterns = shaped(formats, block);
      writeCells(this.context.host, block, true, (row, column) => patternCell(patterns[row]![column]));
    });
  }

  select(): void { this.write((block) => { this.context.host.sheet(block.sheetId).activate(); this.grid(block).activate(); }); }

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
      if (across) this.grid(block).mergeAcross({ isForceMerge: true });
      else this.grid(block).merge({ isForceMerge: true });
    });
  }

  unmerge(): void { this.write((block) => { this.grid(block).breakApart(); }); }

  getCell(row: number, column: number): Range { return this.derive((block) => ({ row: block.row + row, column: block.column + column, rowCount: 1, columnCount: 1 })); }
  getOffsetRange(rows: number, columns: number): Range { return this.derive((block) => ({ ...block, row: block.row + rows, column: block.column + columns })); }
  getResizedRange(rows: number, columns: number): Range { return this.derive((block) => ({ ...block, rowCount: block.rowCount + rows, columnCount: block.columnCount + columns })); }
  getAbsoluteResizedRange(rowCount: number, columnCount: number): Range { return this.derive((block) => ({ ...block, rowCount, columnCount })); }
  getRow(row: number): Range { return this.derive((block) => ({ ...block, row: block.row + row, rowCount: 1 })); }
  getColumn(column: number): Range { return this.derive((block) => ({ ...block, column: block.column + column, columnCount: 1 })); }
  getLastRow(): Range { return this.derive((block) => ({ ...block, row: block.row + block.rowCount - 1, rowCount: 1 })); }
  getEntireRow(): Range { return this.derive((block) => ({ ...block, column: 0, columnCount: this.size(block).columnCount })); }
  getEntireColumn(): Range { return this.derive((block) => ({ ...block, row: 0, rowCount: this.size(block).rowCount })); }

  getBoundingRect(other: Range | Excel.Range | string): Range {
    return this.derive((block) => boundingBlock(block, this.otherBlock(other, block)));
  }

  getIntersectionOrNullObject(other: Range | Excel.Range | string): Range {
    return this.deriveOrNull((block) => sharedBlock(block, this.otherBlock(other, block)));
  }

  getSpillingToRangeOrNullObject(): Range {
    return this.deriveOrNull(({ sheetId, row, column }) => {
      const extent = this.context.host.engine.spills.extents(this.context.host.unitId, sheetId)
        .find((block) => block.startRow === row && block.startColumn === column);
      return extent && { row, column, rowCount: extent.endRow - row + 1, columnCount: extent.endColumn - column + 1 };
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
    const worksheet = () => this.worksheet;
    // Made only when it is asked for: a range that is not there has no sheet.
    return { format: this.format, get worksheet() { return worksheet(); }, dataValidation: this.dataValidation };
  }

  protected readers(): Record<string, (block: SheetBlock) => unknown> {
    const { host } = this.context;
    return {
      address: (block) => sheetPrefix(host.sheet(block.sheetId).getSheetName()) + cellsText(block, this.size(block)),
      rowIndex: (block) => block.row,
      columnIndex: (block) => block.column,
      rowCount: (block) => block.rowCount,
      columnCount: (block) => block.columnCount,
      cellCount: (block) => block.rowCount * block.columnCount,
      values: (block) => readValues(host, block),
      formulas: (block) => readFormulas(host, block),
      numberFormat: (block) => readNumberFormats(host, block),
      text: (block) => readTexts(host, block),
      valueTypes: (block) => readValueTypes(host, block),
      hasSpill: (block) => mapCells(block, (row, column) => host.engine.spills.extentAt(host.unitId, block.sheetId, row, column)).flat().some(Boolean),
    };
  }

  private setCells(property: string, values: unknown): void {
    this.set(property, values, (block) => {
      assertUnlocked(this.context.host, block);
      writeValues(this.context.host, block, values);
    });
  }

  private derive(change: (block: SheetBlock) => Block): Range {
    return new Range(this.context, { name: this.locator.name, missing: "throws", find: () => inSheet(this.target, change(this.target)) });
  }

  private deriveOrNull(change: (block: SheetBlock) => Block | undefined): Range {
    const find = (): SheetBlock | undefined => {
      const block = change(this.target);
      return block && inSheet(this.target, block);
    };
    return new Range(this.context, { name: this.locator.name, missing: "null", find });
  }

  private otherBlock(other: Range | Excel.Range | string, block: SheetBlock): Block {
    return typeof other === "string" ? parseCells(other, this.size(block)) : (other as Range).target;
  }

  private withoutLooks(block: SheetBlock, row: number, column: number) {
    const cell = this.context.host.gridSheet(block.sheetId).getCellRaw(block.row + row, block.column + column);
    if (!cell?.s && !isUnlocked(cell)) return undefined;
    return { s: null, ...(isUnlocked(cell) ? { custom: { ...cell!.custom, unlocked: false } } : {}) };
  }

  private assertStructureOpen(block: SheetBlock): void {
    if (this.context.host.extras.ofSheet(this.context.host.unitId, block.sheetId).protection) throw accessDenied();
  }

  private size({ sheetId }: SheetBlock) {
    const sheet = this.context.host.sheet(sheetId);
    return { rowCount: sheet.getMaxRows(), columnCount: sheet.getMaxColumns() };
  }

  private isWholeRows(block: SheetBlock): boolean { return block.columnCount >= this.size(block).columnCount; }
  private isWholeColumns(block: SheetBlock): boolean { return block.rowCount >= this.size(block).rowCount; }

  private grid(block: SheetBlock) {
    return this.context.host.sheet(block.sheetId).getRange(block.row, block.column, block.rowCount, block.columnCount);
  }

  private command(id: string, block: SheetBlock, params: object): Promise<void> {
    return this.context.host.lateCommand(id, { subUnitId: block.sheetId, ...params });
  }
}

function inSheet({ sheetId }: SheetBlock, block: Block): SheetBlock {
  if (block.row < 0 || block.column < 0 || block.rowCount < 1 || block.columnCount < 1) throw invalidArgument("The range lies outside the sheet.");
  return { row: block.row, column: block.column, rowCount: block.rowCount, columnCount: block.columnCount, sheetId };
}

const patternCell = (pattern: unknown) =>
  typeof pattern === "string" ? { s: { n: pattern === "General" ? null : { pattern } } } : undefined;
