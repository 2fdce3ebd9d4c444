import { splitFormula, type FormulaPiece } from "../engine/formula-text";
import { callsOurFunctions } from "./formula-translation";
import { isArrayShaped } from "./future-functions";

/**
 * Whether a file must hold a formula as a dynamic array formula although it fills only its own cell.
 * Excel writes every cell with a custom function that way, and every formula that calculates with whole ranges: stored
 * as a plain formula, it would pick one row out of each range when Excel calculates it again.
 */
export function isDynamicFormula(formula: string): boolean {
  const pieces = splitFormula(formula).filter((piece) => piece.source.trim() !== "");
  return (
    callsOurFunctions(formula) ||
    pieces.some((piece, index) => piece.kind === "code" && pieces[index + 1]?.source === "(" && isArrayShaped(piece.source)) ||
    calculatesWithRanges(pieces)
  );
}

const OPERATOR = /^[-+*/^&<>=]$/;

/** A range or a table column right beside an operator, as in `A1:A5*2` or `Bill[Kg]*Bill[Price]`. */
function calculatesWithRanges(pieces: readonly FormulaPiece[]): boolean {
  return pieces.some((piece, index) => {
    const range =
      piece.source === ":"
        ? { before: pieces[index - 2], after: pieces[index + 2] }
        : isWholeColumn(piece)
          ? { before: pieces[index - 1], after: pieces[index + 1] }
          : undefined;
    return range !== undefined && (OPERATOR.test(range.before?.source ?? "") || OPERATOR.test(range.after?.source ?? ""));
  });
}

const isWholeColumn = (piece: FormulaPiece): boolean => piece.kind === "structured" && !/#This Row|^\s*@/i.test(piece.inside);
