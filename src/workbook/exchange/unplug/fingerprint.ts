import { tokenize, tokenTypes } from "@borgar/fx";

/**
 * A short mark of what stands in a cell, the same after a spreadsheet program has put the formula into its own spelling
 * (blanks, capital letters, 0.0000001 for 1E-7) or written a number with fewer digits. Five letters and digits: enough to
 * notice that somebody typed something else, not to guard against anybody.
 */
export function fingerprint(content: unknown): string {
  return hash(canonical(content)).toString(36).padStart(6, "0").slice(-5);
}

function canonical(content: unknown): string {
  if (content === null || content === undefined) return "";
  if (typeof content === "number") return `number ${short(content)}`;
  if (typeof content !== "string") return JSON.stringify(content);
  if (!content.startsWith("=")) return content;
  return tokenize(content, { mergeRefs: true })
    .filter(({ type }) => type !== tokenTypes.WHITESPACE && type !== tokenTypes.NEWLINE)
    .map(({ type, value }) => {
      if (type === tokenTypes.NUMBER) return short(Number(value));
      if (type === tokenTypes.STRING) return value;
      return value.toUpperCase().replace(/^_XLFN\.(_XLWS\.)?/, "");
    })
    .join("");
}

const short = (value: number): string => String(Number(value.toPrecision(11)));

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) value = Math.imul(value ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return value;
}
