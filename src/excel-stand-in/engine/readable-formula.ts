import { parse, tokenize, tokenTypes } from "@borgar/fx";

/** Whether a text that begins with "=" can be read as a formula: =SUM(A1)) and =1+ cannot. A blank may stand before a bracket. */
export function isReadableFormula(formula: string): boolean {
  try {
    const tokens = tokenize(formula, { mergeRefs: true });
    const opensBracket = (index: number): boolean => tokens[index]?.value === "(";
    const isName = ({ value }: { value: string } = { value: "" }): boolean => /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(value);
    parse(
      tokens
        .filter(({ type }, index) => !(type === tokenTypes.WHITESPACE && opensBracket(index + 1) && isName(tokens[index - 1])))
        .map((token, index, kept) => (isName(token) && kept[index + 1]?.value === "(" ? { ...token, type: tokenTypes.FUNCTION } : token)),
    );
    return true;
  } catch {
    return false;
  }
}
