import { quoted } from "../../../../functions/formula-text";

/** A number as it is typed in a formula; 15 digits are what Excel keeps. */
export function num(value: number): string {
  const text = String(Number(value.toPrecision(15)))
    .replace("e", "E")
    .replace("E+", "E");
  return value < 0 ? `(${text})` : text;
}

/** A number as a further term of a sum: with its sign before it. */
export const term = (value: number): string => (value < 0 ? `-${num(-value)}` : `+${num(value)}`);

/** A sum of powers, from none on: "1+2*x-3*x^2". */
export const powersText = (factors: readonly number[], x: string): string =>
  factors.map((factor, power) => (power === 0 ? num(factor) : `${term(factor)}*${x}${power === 1 ? "" : `^${power}`}`)).join("");

/** Excel takes no text in a formula that is longer than this. */
const longestText = 250;

/** A text in quotes, in pieces where it is long. */
export function quote(text: string): string {
  const pieces = text.match(new RegExp(`[^]{1,${longestText}}`, "gu")) ?? [""];
  return pieces.length === 1 ? quoted(pieces[0] ?? "") : `(${pieces.map(quoted).join("&")})`;
}

/** Brackets around whatever is not one name, number, text or function call, so that it can stand within a sum. */
export function atom(text: string): string {
  if (/^[\p{L}\p{N}_.$!:#]+$/u.test(text) || /^'[^']*'![$\w:]+$/.test(text) || /^"[^"]*"$/.test(text)) return text;
  return isOneCall(text) ? text : `(${text})`;
}

/** Whether the bracket that opens after the first name, or at the start, closes at the very end. */
function isOneCall(text: string): boolean {
  if (!/^[\p{L}\p{N}_.]*\(.*\)$/su.test(text)) return false;
  let depth = 0;
  let quoted = false;
  for (const [index, letter] of [...text].entries()) {
    if (letter === '"') quoted = !quoted;
    else if (!quoted && letter === "(") depth += 1;
    else if (!quoted && letter === ")" && --depth === 0) return index === [...text].length - 1;
  }
  return false;
}

export const product = (...factors: readonly string[]): string => factors.filter((factor) => factor !== "1").join("*") || "1";
