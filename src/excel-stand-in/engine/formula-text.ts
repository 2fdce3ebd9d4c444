/** One piece of a formula's text. `code` is everything that is not one of the others. */
export type FormulaPiece =
  | { kind: "text" | "code" | "number"; source: string }
  /** A bracketed part, with the table's name before it if there is one: `Malts[Mass]`, `[@Mass]`. */
  | { kind: "structured"; source: string; table: string; inside: string }
  /** A word that could be a defined name, with the sheet before it if there is one. */
  | { kind: "name"; source: string; sheet: string | undefined; name: string };

const sheetPart = String.raw`(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!`;
const word = String.raw`[\p{L}_\\][\p{L}\p{N}_.\\?]*`;
const TEXT = /"(?:[^"]|"")*"/uy;
const QUALIFIED = new RegExp(`(${sheetPart})?(${word})`, "uy");
const REFERENCE = new RegExp(String.raw`(?:${sheetPart})?\$?[A-Za-z]{1,3}\$?\d+(?![\p{L}\p{N}_.(])`, "uy");
const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/uy;

/** Splits a formula so that names and table references can be replaced without touching texts, functions or cells. */
export function splitFormula(formula: string): FormulaPiece[] {
  const pieces: FormulaPiece[] = [];
  let at = 0;
  const match = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(formula);
  };
  while (at < formula.length) {
    const piece = readText(match) ??
      readReference(match) ??
      readName(match, formula, at) ??
      readStructured(formula, at, "", at) ??
      readNumber(match) ?? { kind: "code" as const, source: formula[at]! };
    pieces.push(piece);
    at += piece.source.length;
  }
  return pieces;
}

type Matcher = (pattern: RegExp) => RegExpExecArray | null;

function readText(match: Matcher): FormulaPiece | undefined {
  const found = match(TEXT);
  return found ? { kind: "text", source: found[0] } : undefined;
}

function readReference(match: Matcher): FormulaPiece | undefined {
  const found = match(REFERENCE);
  return found ? { kind: "code", source: found[0] } : undefined;
}

function readNumber(match: Matcher): FormulaPiece | undefined {
  const found = match(NUMBER);
  return found ? { kind: "number", source: found[0] } : undefined;
}

function readName(match: Matcher, formula: string, at: number): FormulaPiece | undefined {
  const found = match(QUALIFIED);
  if (!found) return undefined;
  const [source, sheet, name] = found as unknown as [string, string | undefined, string];
  const next = formula[at + source.length];
  if (next === "[" && !sheet) return readStructured(formula, at + source.length, name, at);
  if (next === "(" || next === "!") return { kind: "code", source };
  if (/^(?:TRUE|FALSE)$/iu.test(name)) return { kind: "code", source };
  return { kind: "name", source, sheet: sheet && unquoteSheet(sheet.slice(0, -1)), name };
}

function readStructured(formula: string, open: number, table: string, from: number): FormulaPiece | undefined {
  if (formula[open] !== "[") return undefined;
  let depth = 0;
  for (let end = open; end < formula.length; end++) {
    // An apostrophe in a structured reference lets the next character stand for itself.
    if (formula[end] === "'") end++;
    else if (formula[end] === "[") depth++;
    else if (formula[end] === "]" && --depth === 0) {
      return { kind: "structured", source: formula.slice(from, end + 1), table, inside: formula.slice(open + 1, end) };
    }
  }
  return undefined;
}

export const quoteSheet = (name: string): string => `'${name.replaceAll("'", "''")}'`;
export const unquoteSheet = (name: string): string => (name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name);

/** Replaces the sheet in front of every cell reference and name that points at `from`. */
export function renameSheet(formula: string, from: string, to: string): string {
  return splitFormula(formula)
    .map((piece) => {
      const split = piece.kind === "code" || piece.kind === "name" ? piece.source.lastIndexOf("!") : -1;
      if (split < 0 || unquoteSheet(piece.source.slice(0, split)).toLowerCase() !== from.toLowerCase()) return piece.source;
      return `${quoteSheet(to)}!${piece.source.slice(split + 1)}`;
    })
    .join("");
}
