import { tokenize, tokenTypes, type Token } from "@borgar/fx";

/** One piece of a formula's text. `code` is everything that is not one of the others. */
export type FormulaPiece =
  | { kind: "text" | "code" | "number"; source: string }
  /** A bracketed part, with the table's name before it if there is one: `Malts[Mass]`, `[@Mass]`. */
  | { kind: "structured"; source: string; table: string; inside: string }
  /** A word that could be a defined name, with the sheet before it if there is one. */
  | { kind: "name"; source: string; sheet: string | undefined; name: string };

/** Splits a formula so that names and table references can be replaced without touching texts, functions or cells. */
export function splitFormula(formula: string): FormulaPiece[] {
  const tokens = tokenize(formula, { mergeRefs: false, negativeNumbers: false });
  const pieces: FormulaPiece[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const sheet = isSheet(tokens[at]!) && tokens[at + 1]?.value === "!" ? tokens[at]!.value : undefined;
    if (sheet !== undefined) at += 2;
    const table = tokens[at]?.type === tokenTypes.REF_NAMED && tokens[at + 1]?.type === tokenTypes.REF_STRUCT ? tokens[at]!.value : "";
    if (table !== "") at++;
    pieces.push(...piecesOf(tokens[at], sheet, table));
  }
  return pieces;
}

const isSheet = ({ type }: Token): boolean => type === tokenTypes.CONTEXT || type === tokenTypes.CONTEXT_QUOTE;

function piecesOf(token: Token | undefined, sheet: string | undefined, table: string): FormulaPiece[] {
  const before = sheet === undefined ? "" : `${sheet}!`;
  const { type, value } = token ?? { type: tokenTypes.OPERATOR, value: "" };
  const source = `${before}${table}${value}`;
  if (type === tokenTypes.STRING) return [{ kind: "text", source }];
  if (type === tokenTypes.NUMBER) return [{ kind: "number", source }];
  if (type === tokenTypes.REF_STRUCT) return [{ kind: "structured", source, table, inside: value.slice(1, -1) }];
  if (type === tokenTypes.REF_NAMED) return [{ kind: "name", source, sheet: sheet && unquoteSheet(sheet), name: value }];
  if (type === tokenTypes.FUNCTION || type === tokenTypes.BOOLEAN || type === tokenTypes.ERROR) return [code(source)];
  if (value === "") return [code(source)];
  // Whole columns and rows in their two halves, as a block of cells comes; signs and blanks one by one.
  const parts = /^[\p{L}\p{N}$:]{2,}$/u.test(value) ? value.split(/(:)/u) : [...value];
  return parts.map((part, index) => code(index === 0 ? before + part : part));
}

const code = (source: string): FormulaPiece => ({ kind: "code", source });

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
