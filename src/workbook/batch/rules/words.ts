import { quoted as text } from "../../../functions/formula-text";
import type { Rule } from "./rule";

export { text };

/** A gravity in words; TEXT would follow the computer's regional settings, FIXED only its decimal sign. */
export const gravityText = (name: string): string => `FIXED(${name},3,TRUE)`;

/** Somebody typed letters, or a number with a sign that this Excel does not take for a decimal one. */
export const isWords = (name: string): string => `IF(ISTEXT(${name}),LEN(${name})>0,FALSE)`;

/** The same anywhere in a column. */
export const anyWords = (column: string): string => `SUMPRODUCT(ISTEXT(${column})*(LEN(${column})>0))>0`;

export const anyError = (column: string): string => `SUMPRODUCT(--ISERROR(${column}))>0`;

const aloneWords = text("Type the number alone, with the decimal sign of your Excel.");

/** Per cent typed as a share of one. */
export const shareOfOne = (name: string, label: string): Rule => ({
  id: `${name}-share-of-one`,
  holds: `AND(N(${name})>0,N(${name})<=1)`,
  says: text(`${label}:`),
  remedy: `"type "&100*${name}&" for "&100*${name}&" %."`,
});

/** A number typed into one cell that cannot be used: an error, a text, or less than nothing. */
export function unusable(name: string, label: string, negative: "refused" | "allowed" = "refused"): Rule[] {
  return [
    { id: `${name}-error`, holds: `ISERROR(${name})`, says: text(`${label} shows an error:`), remedy: text("type the number.") },
    {
      id: `${name}-text`,
      holds: isWords(name),
      says: `${text(`${label}: “`)}&${name}&${text("” is a text, not a number.")}`,
      remedy: aloneWords,
    },
    ...(negative === "refused"
      ? [{ id: `${name}-negative`, holds: `N(${name})<0`, says: `${text(`${label}: `)}&${name}&${text(" is less than nothing.")}` }]
      : []),
  ];
}

/** The same of a column: which line it is, the brewer sees. */
export function unusableIn(id: string, column: string, label: string): Rule[] {
  return [
    { id: `${id}-error`, holds: anyError(column), says: text(`${label}: a cell shows an error.`), remedy: text("Type the number.") },
    { id: `${id}-text`, holds: anyWords(column), says: text(`${label}: a text stands where a number belongs.`), remedy: aloneWords },
    { id: `${id}-negative`, holds: `MIN(${column})<0`, says: text(`${label}: less than nothing cannot be.`) },
  ];
}
