/**
 * The words of a check as a native formula: the first case that holds speaks, "" where none does. Cases are formulas, so
 * that a sheet without the add-in goes on judging.
 */
export type Case = readonly [holds: string, words: string];

export const firstOf = (cases: readonly Case[], otherwise = '""'): string =>
  cases.reduceRight((rest, [holds, words]) => `IF(${holds},${words},${rest})`, otherwise);

/** A text within a formula: its quotation marks doubled. */
export const text = (words: string): string => `"${words.replaceAll('"', '""')}"`;

/** A gravity in words; TEXT would follow the computer's regional settings, FIXED only its decimal sign. */
export const gravityText = (name: string): string => `FIXED(${name},3,TRUE)`;

/** Somebody typed letters, or a number with a sign that this Excel does not take for a decimal one. */
export const isWords = (name: string): string => `IF(ISTEXT(${name}),LEN(${name})>0,FALSE)`;

/** The same anywhere in a column. */
export const anyWords = (column: string): string => `SUMPRODUCT(ISTEXT(${column})*(LEN(${column})>0))>0`;

export const anyError = (column: string): string => `SUMPRODUCT(--ISERROR(${column}))>0`;

/** Per cent typed as a share of one. */
export const shareOfOne = (name: string, label: string): Case => [
  `AND(N(${name})>0,N(${name})<=1)`,
  `"${label}: type "&100*${name}&" for "&100*${name}&" %."`,
];

/** A number typed into one cell that cannot be used: an error, a text, or less than nothing. */
export function unusable(name: string, label: string, negative: "refused" | "allowed" = "refused"): Case[] {
  return [
    [`ISERROR(${name})`, text(`${label} shows an error: type the number.`)],
    [
      isWords(name),
      `${text(`${label}: “`)}&${name}&${text("” is a text, not a number. Type the number alone, with the decimal sign of your Excel.")}`,
    ],
    ...(negative === "refused" ? [[`N(${name})<0`, `${text(`${label}: `)}&${name}&${text(" is less than nothing.")}`] as const] : []),
  ];
}

/** The same of a column: which line it is, the brewer sees. */
export function unusableIn(column: string, label: string): Case[] {
  return [
    [anyError(column), text(`${label}: a cell shows an error. Type the number.`)],
    [anyWords(column), text(`${label}: a text stands where a number belongs. Type the number alone, with the decimal sign of your Excel.`)],
    [`MIN(${column})<0`, text(`${label}: less than nothing cannot be.`)],
  ];
}
