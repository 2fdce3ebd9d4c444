import type { IWorkbookData } from "@univerjs/core";
import { splitFormula, type FormulaPiece } from "../engine/formula-text";
import { asLegacy, type Place, type Surroundings } from "../engine/implicit-intersection";
import { parseBlock, splitSheet } from "./addresses";
import type { GridName } from "./defined-names";
import { callsOurFunctions } from "./formula-translation";
import { isArrayShaped } from "./future-functions";
import { readResource, RESOURCE } from "./resources";

/**
 * Whether a file must hold a formula as a dynamic array formula although it fills only its own cell.
 * Excel writes every cell with a custom function that way, and every formula that would mean something else as a plain one: that
 * would pick one row out of a range where it asks for one value, in Excel and here when the file is opened again. That it would take
 * one cell of its whole answer does not matter here: what fills more than its own cell is dynamic anyway.
 */
export function isDynamicFormula(formula: string, at: Place, around: Surroundings): boolean {
  const pieces = splitFormula(formula).filter((piece) => piece.source.trim() !== "");
  return (
    callsOurFunctions(formula) ||
    pieces.some((piece, index) => piece.kind === "code" && pieces[index + 1]?.source === "(" && isArrayShaped(piece.source)) ||
    calculatesWithRanges(pieces) ||
    ![formula, `=SINGLE(${formula.replace(/^=/, "")})`].includes(asLegacy(formula, at, around))
  );
}

const known = new WeakMap<IWorkbookData, Surroundings>();

/** The names of a workbook that stand for more than one cell; one that is a formula may. */
export function surroundingsOf(snapshot: IWorkbookData): Surroundings {
  const before = known.get(snapshot);
  if (before) return before;
  const names = Object.values(readResource<Record<string, GridName>>(snapshot, RESOURCE.names) ?? {});
  const ranges = new Set(names.filter(({ formulaOrRefString }) => !isOneValue(formulaOrRefString)).map(({ name }) => name.toLowerCase()));
  const around: Surroundings = {
    isRange: (name) => ranges.has(name.slice(name.lastIndexOf("!") + 1).toLowerCase()),
    isFunction: () => true,
  };
  known.set(snapshot, around);
  return around;
}

function isOneValue(meaning: string): boolean {
  const text = meaning.replace(/^=/, "");
  if (/^(-?[\d.]+(e[+-]?\d+)?|"([^"]|"")*"|TRUE|FALSE)$/i.test(text)) return true;
  const block = parseBlock(splitSheet(text).rest);
  return block !== undefined && block.startRow === block.endRow && block.startColumn === block.endColumn;
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
