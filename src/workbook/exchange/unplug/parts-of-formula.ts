import { tokenize, tokenTypes, type Token } from "@borgar/fx";
import { gyleCalls, type GyleCall } from "../../grid/formulas";

/** A GYLE call or a reference within a formula's text. */
export interface Part {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** Names of the native functions around it, outermost first. */
  readonly inside: readonly string[];
  readonly call?: GyleCall;
  /** `INDEX(call,1,2)`: the two numbers; the part is then the whole INDEX. */
  readonly indexed?: readonly number[];
}

/** The outermost GYLE calls and the references of a text, with the native functions that they stand in. */
export function partsOf(text: string): Part[] {
  const calls = gyleCalls(text);
  const parts: Part[] = [];
  const open: string[] = [];
  let start = 0;
  const tokens = tokenize(text, { mergeRefs: true });
  for (const [index, token] of tokens.entries()) {
    const end = start + token.value.length;
    const call = calls.find((one) => one.start <= start && end <= one.end);
    if (call !== undefined) {
      if (call.start === start) parts.push(callPart(text, call, open));
    } else if (token.value === "(") open.push(nameBefore(tokens, index));
    else if (token.value === ")") open.pop();
    else if (isReference(token)) {
      const spill = tokens[index + 1]?.value === "#" ? 1 : 0;
      parts.push({ start, end: end + spill, text: text.slice(start, end + spill), inside: open.filter((name) => name !== "") });
    }
    start = end;
  }
  return parts;
}

function callPart(text: string, call: GyleCall, open: readonly string[]): Part {
  const inside = open.filter((name) => name !== "");
  const before = /INDEX\(\s*$/i.exec(text.slice(0, call.start));
  const after = /^\s*,\s*(\d+)\s*(?:,\s*(\d+)\s*)?\)/.exec(text.slice(call.end));
  if (!before || !after) return { start: call.start, end: call.end, text: call.text, inside, call };
  return {
    start: before.index,
    end: call.end + after[0].length,
    text: call.text,
    inside: inside.slice(0, -1),
    call,
    indexed: [after[1], after[2]].filter((digits) => digits !== undefined).map(Number),
  };
}

const referenceTypes: readonly string[] = [
  tokenTypes.REF_RANGE,
  tokenTypes.REF_BEAM,
  tokenTypes.REF_TERNARY,
  tokenTypes.REF_NAMED,
  tokenTypes.REF_STRUCT,
];
const isReference = (token: Token): boolean => referenceTypes.includes(token.type);

function nameBefore(tokens: readonly Token[], bracket: number): string {
  const before = tokens[bracket - 1];
  return before?.type === tokenTypes.FUNCTION ? before.value.toUpperCase().replace(/^_XLFN\.(_XLWS\.)?/, "") : "";
}

/** How deep brackets stand within brackets. */
export function bracketDepth(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (const letter of text) {
    if (letter === '"') quoted = !quoted;
    else if (!quoted && letter === "(") deepest = Math.max(deepest, ++depth);
    else if (!quoted && letter === ")") depth -= 1;
  }
  return deepest;
}
