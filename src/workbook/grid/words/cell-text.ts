/** A text that Excel would take for a formula, or whose apostrophe it would swallow, when it is typed into a cell. */
export const opensLikeFormula = (text: string): boolean => /^[=+\-@']/.test(text);

/** What Excel would turn into a number, a date or TRUE. */
const numberOrDate =
  /^[\d.,:/\- ]*\d[\d.,:/\- ]*(%|[ap]m?)?$|^\d{1,2}[ -][a-z]{3,9}\.?([ -]\d{2,4})?$|^[a-z]{3,9}[ -]\d{1,4}$|^\d+(\.\d+)?e[+-]?\d+$|^(true|false)$/i;

/**
 * A text as it must be written so that the cell shows exactly it: with the apostrophe in front that tells Excel to take what follows
 * as words. So a name such as "1/2" stays one, and words from a file never become a formula.
 */
export const cellText = (text: string): string => (opensLikeFormula(text) || numberOrDate.test(text) ? `'${text}` : text);

/** What a cell holds, as it must be written to stand there again: a formula as it is, words as the words they were. */
export const writtenAgain = (formula: string | number | boolean, value: unknown): string | number | boolean =>
  typeof formula === "string" && formula === value ? cellText(formula) : formula;
