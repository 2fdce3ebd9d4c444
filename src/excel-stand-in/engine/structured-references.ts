import { splitFormula } from "./formula-text";

/**
 * Writes "this row" references the way files store them, which is the only way the grid's engine understands:
 * `[@Mass]` and `Malts[@Mass]` become `Malts[[#This Row],[Mass]]`.
 * @param tableHere the table that holds the cell, for references that leave the table's name out
 */
export function expandThisRow(formula: string, tableHere: string | undefined): string {
  if (!formula.includes("[")) return formula;
  return splitFormula(formula)
    .map((piece) => {
      if (piece.kind !== "structured") return piece.source;
      const table = piece.table || tableHere;
      if (!table) return piece.source;
      return piece.inside.trimStart().startsWith("@") ? thisRow(table, piece.inside.trim().slice(1)) : `${table}[${piece.inside}]`;
    })
    .join("");
}

/** `columns` is what follows the @: nothing, a bare column, or one or two columns in brackets. */
function thisRow(table: string, columns: string): string {
  if (columns === "") return `${table}[#This Row]`;
  return `${table}[[#This Row],${columns.startsWith("[") ? columns : `[${columns}]`}]`;
}

/** The same formula with one table called otherwise, with or without brackets behind its name. */
export function renameTable(formula: string, from: string, to: string): string {
  const same = (name: string): boolean => name.toLowerCase() === from.toLowerCase();
  return splitFormula(formula)
    .map((piece) => {
      if (piece.kind === "structured" && same(piece.table)) return `${to}[${piece.inside}]`;
      return piece.kind === "name" && piece.sheet === undefined && same(piece.name) ? to : piece.source;
    })
    .join("");
}
