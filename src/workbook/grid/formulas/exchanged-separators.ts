/**
 * A formula typed by the habits of another country, `=GYLE.BEER.ABV(1,048;1,010)`, as it would have to be typed here: with a point in
 * numbers and commas between arguments. Undefined where no semicolon parts arguments. Excel hands over formulas in this spelling
 * whatever the country, so a semicolon between brackets is never one of its own; in a block of constants, `{1;2}`, it is.
 *
 * @param formula as it stands in the cell
 */
export function withOurSeparators(formula: string): string | undefined {
  if (!formula.startsWith("=") || !formula.includes(";")) return undefined;
  let found = false;
  let depth = 0;
  const typed = formula.replace(skipped, (part, text: string | undefined, comma: string | undefined) => {
    if (text !== undefined) return part;
    if (comma !== undefined) return ".";
    if (part === "(") depth += 1;
    else if (part === ")") depth -= 1;
    else if (depth > 0) {
      found = true;
      return ", ";
    }
    return part;
  });
  return found ? typed : undefined;
}

/** Texts, names of sheets, blocks of constants and references to tables; a comma within a number; brackets and semicolons. */
const skipped = /("(?:[^"]|"")*"?|'(?:[^']|'')*'?|\{[^}]*\}?|\[[^\]]*\]?)|(?<=\d)(,)(?=\d)|[();]/gu;

/** What is wrong with such a formula, and what to do. */
export const separatorWords = (typed: string) => ({
  what: "Commas and semicolons are exchanged: here a number has a point, and arguments are parted by commas.",
  remedy: `Type ${typed}`,
});
