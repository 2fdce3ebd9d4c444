import { columnIndex } from "../xlsx/addresses";
import type { CellPlace } from "./cell-key";
import type { Engine } from "./engine";
import { splitFormula, unquoteSheet, type FormulaPiece } from "./formula-text";

/** More cells than these are not looked through. */
const mostCells = 5000;

const CELL = /^(?:(.*)!)?\$?([A-Za-z]{1,3})\$?(\d+)$/su;

/** The cells that a formula reads, by addresses and by names that stand for addresses, in the order in which it gives them. */
export function cellsRead(engine: Engine, place: CellPlace): CellPlace[] {
  return cellsIn(engine, place, engine.formulaAt(place)).slice(0, mostCells);
}

function cellsIn(engine: Engine, place: CellPlace, formula: string): CellPlace[] {
  const pieces = splitFormula(formula);
  const cells: CellPlace[] = [];
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at]!;
    if (piece.kind === "name") cells.push(...cellsOfName(engine, place, piece));
    const first = cornerOf(piece);
    if (first === undefined) continue;
    const last = pieces[at + 1]?.source === ":" ? cornerOf(pieces[at + 2]) : undefined;
    if (last !== undefined) at += 2;
    const sheetId =
      first.sheet === undefined ? place.sheetId : engine.univerAPI.getWorkbook(place.unitId)?.getSheetByName(first.sheet)?.getSheetId();
    if (sheetId === undefined) continue;
    const { row: endRow, column: endColumn } = last ?? first;
    for (let row = first.row; row <= endRow && cells.length < mostCells; row++) {
      for (let column = first.column; column <= endColumn; column++) cells.push({ unitId: place.unitId, sheetId, row, column });
    }
  }
  return cells;
}

function cellsOfName(engine: Engine, place: CellPlace, { name, sheet }: { name: string; sheet: string | undefined }): CellPlace[] {
  const meant = engine.names.find(place.unitId, place.sheetId, name, sheet)?.formulaOrRefString;
  // What a name is computed from is its own matter; only a plain block of cells is followed.
  return meant !== undefined && meant.replace(/'(?:[^']|'')*'!/gu, "").match(/^=?(?:[^!]*!)?\$?[A-Za-z]+\$?\d+(?::\$?[A-Za-z]+\$?\d+)?$/u)
    ? cellsIn(engine, place, meant)
    : [];
}

function cornerOf(piece: FormulaPiece | undefined): { sheet: string | undefined; row: number; column: number } | undefined {
  const found = piece?.kind === "code" ? CELL.exec(piece.source) : null;
  if (!found) return undefined;
  const [, sheet, column = "", row] = found;
  return { sheet: sheet === undefined ? undefined : unquoteSheet(sheet), row: Number(row) - 1, column: columnIndex(column) };
}
