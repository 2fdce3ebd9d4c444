import { splitFormula, type FormulaPiece } from "../engine/formula-text";
import { callForSpills } from "../engine/call-for-spills";
import { atSignsAsCalls } from "../engine/implicit-intersection";
import { isTooDeep } from "../engine/formula-depth";
import { filePrefix } from "./future-functions";
import { markLocalVariables } from "./local-variable-marks";
import { UnreadableFileError } from "./unreadable-file-error";

/** How Excel stores a custom function: the dots of its full name become underscores. */
const CUSTOM_PREFIX = "_xldudf_";
export const OUR_NAMESPACE = "GYLE";

/**
 * A formula as the grid shows it (`=GYLE.BEER.ABV(og,fg)`) into the form a file holds (`_xldudf_GYLE_BEER_ABV(og,fg)`):
 * no equals sign, prefixes on newer functions and on the variables of LET and LAMBDA. Texts in quotes stay untouched.
 */
export function toFileFormula(formula: string): string {
  const spills = callForSpills(splitFormula(formula.replace(/^=/, "")), "_xlfn.ANCHORARRAY");
  const calls = atSignsAsCalls(`=${spills.map(({ source }) => source).join("")}`, "_xlfn.SINGLE");
  const marked = markLocalVariables(splitFormula(calls.slice(1)));
  return marked
    .map(({ kind, source }, index) => (kind === "code" && marked[index + 1]?.source === "(" ? functionToFile(source) : source))
    .join("");
}

/**
 * A file's formula into the form the grid shows, with an equals sign.
 * @param functionNames our functions without the namespace, such as "BEER.ABV"; names that are not in the list get dots
 * for all underscores, which is right for every name of ours.
 * @throws {UnreadableFileError} if it is nested so deeply that nobody here could read it; a cell's formula is asked about before
 */
export function fromFileFormula(formula: string, functionNames: readonly string[] = []): string {
  if (isTooDeep(formula)) throw new UnreadableFileError("one of its names, rules or lists is a formula that is nested too deeply");
  const dotted = new Map(functionNames.map((name) => [name.toUpperCase().replaceAll(".", "_"), name.toUpperCase()]));
  return `=${unwrapHelpers(splitFormula(formula))
    .map((piece) => (piece.kind === "code" || piece.kind === "name" ? wordFromFile(piece.source, dotted) : piece.source))
    .join("")}`;
}

/** Whether a formula, as the grid shows it, calls one of our functions. */
export function callsOurFunctions(formula: string): boolean {
  return splitFormula(formula).some((piece, index, all) => piece.kind === "code" && all[index + 1]?.source === "(" && isOurs(piece.source));
}

const isOurs = (name: string): boolean => name.toUpperCase().startsWith(`${OUR_NAMESPACE}.`);

function functionToFile(name: string): string {
  if (isOurs(name)) return CUSTOM_PREFIX + name.toUpperCase().replaceAll(".", "_");
  return filePrefix(name) + name;
}

function wordFromFile(word: string, dotted: ReadonlyMap<string, string>): string {
  const bare = word.replace(/^_xlfn\.(_xlws\.)?/, "").replace(/^_xlpm\./, "");
  const custom = /^_xldudf_([A-Z0-9]+)_([A-Z0-9_]+)$/i.exec(bare);
  if (!custom) return bare;
  const [, namespace = "", name = ""] = custom;
  return `${namespace.toUpperCase()}.${dotted.get(name.toUpperCase()) ?? name.toUpperCase().replaceAll("_", ".")}`;
}

/** `_xlfn.ANCHORARRAY(A1)` back to `A1#`, and `_xlfn.SINGLE(A1:A9)` back to `@A1:A9`. */
function unwrapHelpers(pieces: readonly FormulaPiece[]): FormulaPiece[] {
  const result: FormulaPiece[] = [];
  for (let at = 0; at < pieces.length; at++) {
    const helper = /^_xlfn\.(ANCHORARRAY|SINGLE)$/i.exec(pieces[at]!.source)?.[1]?.toUpperCase();
    const close = helper && pieces[at + 1]?.source === "(" ? closingBracket(pieces, at + 1) : -1;
    const inner = pieces.slice(at + 2, Math.max(close, 0));
    if (close < 0 || inner.length === 0 || (helper === "ANCHORARRAY" && inner.length > 1)) {
      result.push(pieces[at]!);
      continue;
    }
    const given = unwrapHelpers(inner);
    if (helper === "ANCHORARRAY") result.push(...given, code("#"));
    else if (isOneOperand(given)) result.push(code("@"), ...given);
    else result.push(code("@"), code("("), ...given, code(")"));
    at = close;
  }
  return result;
}

const code = (source: string): FormulaPiece => ({ kind: "code", source });

function closingBracket(pieces: readonly FormulaPiece[], open: number): number {
  let depth = 0;
  for (let at = open; at < pieces.length; at++) {
    if (pieces[at]!.source === "(") depth++;
    else if (pieces[at]!.source === ")" && --depth === 0) return at;
  }
  return -1;
}

/** Whether an @ before it takes all of it. */
function isOneOperand(pieces: readonly FormulaPiece[]): boolean {
  let depth = 0;
  let inSheetName = false;
  for (const { source } of pieces) {
    if (source === "'") inSheetName = !inSheetName;
    else if (source === "(") depth++;
    else if (source === ")") depth--;
    else if (depth === 0 && !inSheetName && /^[-+*/^&<>=%,\s]$/u.test(source)) return false;
  }
  return true;
}
