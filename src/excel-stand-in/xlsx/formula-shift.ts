import { splitFormula } from "../engine/formula-text";
import { columnIndex, columnLetters, LAST_COLUMN, LAST_ROW } from "./addresses";

/**
 * Moves the relative references of a formula, as copying the cell would. Files and the grid store a formula that was
 * filled down once, with a number for the other cells; this writes it out for each of them.
 */
export function shiftFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return splitFormula(formula)
    .map((piece, index, all) => {
      // LOG10( looks like a cell, but is a function.
      if (piece.kind !== "code" || !CELL.test(piece.source) || all[index + 1]?.source === "(") return piece.source;
      return piece.source.replace(CELL, (_, sheet: string, fixedColumn: string, letters: string, fixedRow: string, number: string) => {
        const column = columnIndex(letters) + (fixedColumn ? 0 : columns);
        const row = Number(number) - 1 + (fixedRow ? 0 : rows);
        if (column < 0 || row < 0 || column > LAST_COLUMN || row > LAST_ROW) return "#REF!";
        return `${sheet}${fixedColumn}${columnLetters(column)}${fixedRow}${row + 1}`;
      });
    })
    .join("");
}

const CELL = /^((?:.*!)?)(\$?)([A-Za-z]{1,3})(\$?)(\d+)$/;
