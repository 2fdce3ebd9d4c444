import { tokenize, tokenTypes, type Token } from "@borgar/fx";

/** A stretch of a formula; `end` is the place after its last character. */
export interface FormulaPart {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** One call of a GYLE function as it stands in a formula, from the first letter of its name to its closing bracket. */
export interface GyleCall extends FormulaPart {
  /** "BEER.ABV", whatever the case and spelling in the formula. It need not be a function that exists. */
  readonly id: string;
  /** Without the blanks around them. One that was left out has the empty text; a call with nothing in its brackets has none. */
  readonly arguments: readonly FormulaPart[];
  /** The GYLE calls in its arguments, also those within native functions there, outermost first. */
  readonly inner: readonly GyleCall[];
  /** 1 for a call that stands in no other GYLE call. */
  readonly depth: number;
}

/**
 * Every GYLE call of a formula that stands in no other one, from left to right. Understands `GYLE.BEER.ABV(…)`, the
 * `_xldudf_GYLE_BEER_ABV(…)` of files, any case of letters, and a blank before the bracket. Texts in quotes, names of
 * sheets and references to tables are never taken for calls, and a call whose bracket is not closed is none.
 *
 * @param formula with or without its equals sign
 */
export function gyleCalls(formula: string): readonly GyleCall[] {
  const tokens = located(formula);
  const found: OpenBracket = { calls: [] };
  const open: OpenBracket[] = [found];
  for (const [index, token] of tokens.entries()) {
    const innermost = open[open.length - 1] ?? found;
    if (token.type !== tokenTypes.OPERATOR) continue;
    if (token.value === "(") open.push({ calls: [], ...begunCall(tokens, index) });
    else if (token.value === "{") open.push({ calls: [] });
    else if (token.value === "," && innermost.call) innermost.call.commas.push(token.start);
    else if ((token.value === ")" || token.value === "}") && open.length > 1) {
      open.pop();
      open[open.length - 1]?.calls.push(
        ...(innermost.call && token.value === ")"
          ? [finishedCall(formula, innermost.call, innermost.calls, token.start)]
          : innermost.calls),
      );
    }
  }
  // What stands in a bracket that is never closed still counts: the user may be in the middle of typing it.
  return atDepth(
    open.flatMap(({ calls }) => calls).sort((one, other) => one.start - other.start),
    1,
  );
}

/** Calls within calls, all in one row: an outer call before those in its arguments. */
export function withInner(calls: readonly GyleCall[]): readonly GyleCall[] {
  return calls.flatMap((call) => [call, ...withInner(call.inner)]);
}

interface BegunCall {
  readonly id: string;
  readonly start: number;
  readonly open: number;
  readonly commas: number[];
}

interface OpenBracket {
  readonly call?: BegunCall;
  readonly calls: GyleCall[];
}

type LocatedToken = Token & { start: number };

function located(formula: string): LocatedToken[] {
  let start = 0;
  return tokenize(formula, { mergeRefs: true }).map((token) => {
    const placed = { ...token, start };
    start += token.value.length;
    return placed;
  });
}

/** The name before an opening bracket, when it is one of ours. */
function begunCall(tokens: readonly LocatedToken[], bracket: number): { call: BegunCall } | undefined {
  let at = bracket - 1;
  while (tokens[at]?.type === tokenTypes.WHITESPACE) at -= 1;
  const name = tokens[at];
  const open = tokens[bracket];
  if (!name || !open || (name.type !== tokenTypes.FUNCTION && name.type !== tokenTypes.REF_NAMED)) return undefined;
  const id = gyleId(name.value);
  return id === undefined ? undefined : { call: { id, start: name.start, open: open.start, commas: [] } };
}

/** "BEER.ABV" of "gyle.beer.abv" or "_xldudf_GYLE_BEER_ABV"; no id of ours holds an underscore. */
export function gyleId(name: string): string | undefined {
  const typed = /^GYLE\.([A-Z0-9.]+)$/i.exec(name)?.[1];
  const inFile = /^_xldudf_GYLE_([A-Z0-9_]+)$/i.exec(name)?.[1]?.replaceAll("_", ".");
  return (typed ?? inFile)?.toUpperCase();
}

function finishedCall(formula: string, { id, start, open, commas }: BegunCall, inner: readonly GyleCall[], close: number): GyleCall {
  const edges = [open, ...commas, close];
  const parts = edges.slice(0, -1).map((edge, index) => trimmed(formula, edge + 1, edges[index + 1] ?? close));
  const none = parts.length === 1 && parts[0]?.text === "";
  return { id, start, end: close + 1, text: formula.slice(start, close + 1), arguments: none ? [] : parts, inner, depth: 1 };
}

function trimmed(formula: string, from: number, to: number): FormulaPart {
  const raw = formula.slice(from, to);
  const text = raw.trim();
  const start = from + (text === "" ? 0 : raw.indexOf(text));
  return { text, start, end: start + text.length };
}

const atDepth = (calls: readonly GyleCall[], depth: number): GyleCall[] =>
  calls.map((call) => ({ ...call, depth, inner: atDepth(call.inner, depth + 1) }));
