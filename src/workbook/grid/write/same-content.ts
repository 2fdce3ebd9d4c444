import type { CellValue } from "../read/named-cells";

/** Numbers are the same when only Excel's own rounding is between them. */
export const isSame = (one: CellValue, other: CellValue): boolean =>
  typeof one === "number" && typeof other === "number" ? Math.abs(one - other) < 1e-9 : one === other;

/** Excel spells a formula in its own way when it gives it back: capitals, blanks, sheet names without quotes that they do not need. */
const spelling = (formula: string): string => formula.replace(/[\s']/g, "").toUpperCase();

/** Whether a cell holds what was typed into it; the apostrophe in front of words is not given back. */
export function isAsTyped(typed: CellValue, now: CellValue): boolean {
  if (typeof typed !== "string" || typeof now !== "string") return isSame(typed, now);
  if (typed.startsWith("=")) return spelling(typed) === spelling(now);
  return typed === now || (typed.startsWith("'") && typed.slice(1) === now);
}

/** Whether a block holds what was written into it. Cells left empty may have been filled by a formula that spills. */
export const isWritten = (typed: readonly (readonly CellValue[])[], now: readonly (readonly CellValue[])[]): boolean =>
  typed.every((line, row) => line.every((content, column) => content === "" || isAsTyped(content, now[row]?.[column] ?? "")));
