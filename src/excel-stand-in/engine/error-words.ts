import { cellKey, type CellPlace } from "./cell-key";
import { cellsRead } from "./cells-read";
import type { Engine } from "./engine";
import { splitFormula } from "./formula-text";
import { localVariables } from "./local-variables";
import { isReadableFormula } from "./readable-formula";

const general: Readonly<Record<string, string>> = {
  "#SPILL!":
    "the answer takes up several cells, and one to the right or below is not empty: clear it, or put the formula where there is room",
  "#REF!": "the formula reads a cell or a sheet that is gone",
  "#DIV/0!": "something is divided by zero, or by a cell that is empty",
  "#NUM!": "there is no number for an answer",
  "#N/A": "what is looked for is not there, or a function was given too many or too few arguments",
  "#VALUE!": "something in the formula is not of the kind that it needs: a text where a number belongs, perhaps",
  "#NAME?": "something in the formula is neither a function nor a name nor a text in quotation marks",
  "#CALC!": "the formula has nothing to give back",
};

/**
 * What is behind the error that a cell shows: the words of the function that gave it, those of the cell that it was
 * handed on from, or what there is to say about its kind. Undefined where the cell shows none.
 */
export function errorWords(engine: Engine, place: CellPlace): string | undefined {
  const shown = engine.spills.valueAt(place.unitId, place.sheetId, place.row, place.column);
  if (typeof shown !== "string" || !(shown in general)) return undefined;
  const own = engine.errorMessageAt(place.unitId, place.sheetId, place.row, place.column);
  if (own !== undefined) return own;
  const source = originOf(engine, place, shown);
  if (source === undefined) return unknownWords(engine, place) ?? general[shown];
  const words =
    engine.errorMessageAt(source.unitId, source.sheetId, source.row, source.column) ?? unknownWords(engine, source) ?? general[shown];
  return `the error comes from ${addressFrom(engine, place, source)}: ${words}`;
}

/** The first cell of the chain by which an error was handed on; undefined where it arises here. */
function originOf(engine: Engine, place: CellPlace, error: string): CellPlace | undefined {
  const seen = new Set([cellKey(place)]);
  let at: CellPlace | undefined;
  for (;;) {
    const next: CellPlace | undefined = cellsRead(engine, at ?? place).find(
      (cell) => !seen.has(cellKey(cell)) && engine.spills.valueAt(cell.unitId, cell.sheetId, cell.row, cell.column) === error,
    );
    if (next === undefined) return at;
    at = next;
    seen.add(cellKey(at));
    if (engine.errorMessageAt(at.unitId, at.sheetId, at.row, at.column) !== undefined) return at;
  }
}

function unknownWords(engine: Engine, place: CellPlace): string | undefined {
  const formula = engine.formulaAt(place);
  if (formula !== "" && !isReadableFormula(formula))
    return "this cannot be read as a formula: look for a bracket, a quotation mark or a comma too many or too few";
  if (engine.spills.valueAt(place.unitId, place.sheetId, place.row, place.column) !== "#NAME?") return undefined;
  const pieces = splitFormula(formula).filter(({ source }) => source.trim() !== "");
  const local = localVariables(pieces);
  for (const [index, piece] of pieces.entries()) {
    if (/[“”„]/u.test(piece.source)) return 'texts stand in straight quotation marks ("), not in curved ones';
    if (
      piece.kind === "code" &&
      pieces[index + 1]?.source === "(" &&
      /^[\p{L}_]/u.test(piece.source) &&
      !engine.hasFunction(piece.source)
    ) {
      return `there is no function ${piece.source.toUpperCase()}: check its spelling`;
    }
    if (
      piece.kind === "name" &&
      !local.has(piece.name.toLowerCase()) &&
      engine.names.find(place.unitId, place.sheetId, piece.name, piece.sheet) === undefined
    ) {
      return `there is nothing called ${piece.source} here: check its spelling, or put it in quotation marks if it is a text`;
    }
  }
  return undefined;
}

function addressFrom(engine: Engine, reader: CellPlace, { unitId, sheetId, row, column }: CellPlace): string {
  const sheet = engine.univerAPI.getWorkbook(unitId)?.getSheetBySheetId(sheetId);
  const cell = sheet?.getRange(row, column).getA1Notation() ?? "?";
  return sheetId === reader.sheetId ? cell : `${cell} of the sheet ${sheet?.getSheetName() ?? "?"}`;
}
