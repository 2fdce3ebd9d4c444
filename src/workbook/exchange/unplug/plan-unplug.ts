import { tokenize, tokenTypes } from "@borgar/fx";
import { gyleCalls } from "../../grid/formulas";
import { ToldInFull } from "../../grid/words/told-in-full";
import { address, block as blockOf, position, type Position } from "../../grid/plan/addresses";
import type { CellChange } from "./cell-change";
import { frozenValue, isUncalculated } from "./frozen-value";
import { PlainFormulas } from "./plain-formula";
import { NoPlainForm } from "./plain/no-plain-form";
import type { Shape } from "./references";
import { cellAt, sizeOf, surroundings, type SheetSnapshot } from "./sheet-snapshot";
import { standingStill } from "./standing-still";
import { WorkingCells, type WorkingBlock } from "./working-cells";

export interface UnplugPlan {
  readonly changes: readonly CellChange[];
  /** Where the values are compared with what they were made from, what that says, and the cell that is TRUE once they are out of date. */
  readonly still: { readonly block: WorkingBlock; readonly says: string; readonly changed: string } | undefined;
}

/** A sheet that cannot be unplugged as it stands; nothing was changed. */
export class UnplugRefused extends ToldInFull {
  override readonly name = "UnplugRefused";
}

/** Not now, but in a moment: a GYLE cell is still being calculated. */
export class StillCalculating extends UnplugRefused {}

interface Candidate {
  readonly cell: string;
  readonly formula: string;
  /** What the formula fills now. */
  readonly filled: string;
  readonly away: boolean;
}

/** Whether a formula must be looked at: it calls GYLE, or, for a workbook of its own, speaks of another sheet. */
export function concerns(formula: unknown, standalone: boolean, sheetName: string, names: SheetSnapshot["names"]): formula is string {
  return (
    typeof formula === "string" &&
    formula.startsWith("=") &&
    (gyleCalls(formula).length > 0 || (standalone && speaksOfOtherSheets(formula, sheetName, names)))
  );
}

/**
 * What becomes of every formula of a sheet that calls GYLE. Reads the snapshot only and changes nothing.
 *
 * @param standalone for a workbook of its own: formulas that speak of other sheets become values as well
 * @param isoDay the day of it, which is said beside what stands still
 * @throws StillCalculating while a GYLE cell has no result yet
 */
export function planUnplug(sheet: SheetSnapshot, standalone: boolean, isoDay: string): UnplugPlan {
  const candidates = [...candidatesOf(sheet, standalone)];
  const working = new WorkingCells(below(sheet));
  const sizes = new PlainFormulas(surroundings(sheet, sheet.spills));
  const blocks = new Map(
    candidates.map(({ cell, formula, filled, away }) => [cell, away ? filled : roomFor(sheet, sizes, cell, formula, filled)]),
  );
  // What spilled is written cell by cell from now on, so `F54#` becomes the block itself.
  const plain = new PlainFormulas(surroundings(sheet, blocks), working.put);
  const changes = candidates.map(({ cell, formula, filled, away }): CellChange => {
    const block = blocks.get(cell) ?? filled;
    try {
      if (away) throw new NoPlainForm("it speaks of a sheet that stays behind");
      const size = sizeOf(block);
      working.taken();
      const contents = cellsOf(size, (row, column) => plain.cell(formula, size, { row, column }));
      return { cell, block, formula, reason: undefined, contents, workings: working.taken() };
    } catch (problem) {
      if (!(problem instanceof NoPlainForm)) throw problem;
      const { from } = blockOf(filled);
      const value = (row: number, column: number) => cellAt(sheet.values, sheet.corner, from.row + row, from.column + column);
      return {
        cell,
        block: filled,
        formula,
        reason: problem.message,
        contents: cellsOf(sizeOf(filled), (row, column) => frozenValue(value(row, column))),
        workings: [],
      };
    }
  });
  const still = standingStill(sheet, changes, isoDay);
  if (still === undefined) return { changes, still };
  const at = working.put(still.workings);
  const [block] = working.taken();
  return { changes, still: block && { block, says: still.says(at), changed: still.changed(at) } };
}

function* candidatesOf(sheet: SheetSnapshot, standalone: boolean): Generator<Candidate> {
  const ours = new Set([...sheet.spills.keys()]);
  for (const [rowIndex, row] of sheet.formulas.entries()) {
    for (const [columnIndex, formula] of row.entries()) {
      const cell = address(sheet.corner.row + rowIndex, sheet.corner.column + columnIndex);
      const usesSpill =
        typeof formula === "string" &&
        formula.startsWith("=") &&
        spillsUsed(formula).some((first) => ours.has(first) && gyleCalls(String(formulaAt(sheet, first))).length > 0);
      if (!usesSpill && !concerns(formula, standalone, sheet.name, sheet.names)) continue;
      const value = cellAt(sheet.values, sheet.corner, sheet.corner.row + rowIndex, sheet.corner.column + columnIndex);
      if (isUncalculated(value))
        throw new StillCalculating(
          `${cell} on “${sheet.name}” shows ${String(value)}: wait until everything is calculated, then try again. Nothing was changed.`,
        );
      yield {
        cell,
        formula: formula,
        filled: sheet.spills.get(cell) ?? cell,
        away: standalone && speaksOfOtherSheets(formula, sheet.name, sheet.names),
      };
    }
  }
}

const formulaAt = (sheet: SheetSnapshot, cell: string): unknown => {
  const { row, column } = position(cell);
  return cellAt(sheet.formulas, sheet.corner, row, column);
};

/** The block that a formula may fill one day: as large as its answers can get, where the cells for it are free. */
function roomFor(sheet: SheetSnapshot, plain: PlainFormulas, cell: string, formula: string, filled: string): string {
  let size: Shape;
  try {
    size = plain.size(formula);
  } catch (problem) {
    if (problem instanceof NoPlainForm) return filled;
    throw problem;
  }
  const now = blockOf(filled);
  const { row, column } = position(cell);
  const width = Math.max(now.to.column - column + 1, size.columns);
  const isFree = (r: number): boolean =>
    Array.from({ length: width }, (_, index) => column + index).every(
      (c) => (r <= now.to.row && c <= now.to.column) || cellAt(sheet.formulas, sheet.corner, r, c) === "",
    );
  // As many rows as are free; columns all or none.
  let last = row;
  while (last < row + size.rows - 1 && isFree(last + 1)) last += 1;
  return isFree(row) && last >= now.to.row ? `${cell}:${address(last, column + width - 1)}` : filled;
}

/** From which column on workings stand: the printed part of a batch sheet ends before it. */
const firstWorkingColumn = 11;

/** Below all that is in use, where nobody inserts or deletes a row. */
function below({ corner, formulas }: SheetSnapshot): Position {
  const width = formulas[0]?.length ?? 1;
  return { row: corner.row + formulas.length + 2, column: Math.min(firstWorkingColumn, corner.column + width) };
}

function cellsOf<T>({ rows, columns }: Shape, content: (row: number, column: number) => T): T[][] {
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => content(row, column)));
}

/** First cells of the spills that a formula uses, as in `SUM(F54#)`. */
function spillsUsed(formula: string): string[] {
  const tokens = tokenize(formula, { mergeRefs: true });
  return tokens.flatMap((token, index) =>
    tokens[index + 1]?.value === "#" && token.type === tokenTypes.REF_RANGE ? [token.value.replaceAll("$", "").toUpperCase()] : [],
  );
}

/** Whether a formula speaks of another sheet or another workbook, by itself or by a name that stands for cells there. */
export function speaksOfOtherSheets(formula: string, sheetName: string, names: SheetSnapshot["names"]): boolean {
  const isOther = (name: string): boolean => name.toLowerCase() !== sheetName.toLowerCase();
  return [formula, ...namesUsed(formula).map((name) => names.get(name) ?? "")].some((text) => sheetsSpokenOf(text).some(isOther));
}

/** Names in a formula that stand alone, in lower case. */
const namesUsed = (formula: string): string[] =>
  tokenize(formula, { mergeRefs: true }).flatMap(({ type, value }) =>
    type === tokenTypes.REF_NAMED && !value.includes("!") ? [value.toLowerCase()] : [],
  );

/** Names of the sheets that stand before a "!" in a formula; of another workbook's sheet, with the workbook's name. */
export function sheetsSpokenOf(formula: string): string[] {
  const references: readonly string[] = [
    tokenTypes.REF_RANGE,
    tokenTypes.REF_BEAM,
    tokenTypes.REF_NAMED,
    tokenTypes.REF_TERNARY,
    tokenTypes.REF_STRUCT,
  ];
  return tokenize(formula, { mergeRefs: true }).flatMap(({ type, value }) => {
    const end = references.includes(type) ? value.lastIndexOf("!") : -1;
    return end < 0 ? [] : [value.slice(0, end).replace(/^'|'$/g, "").replaceAll("''", "'")];
  });
}
