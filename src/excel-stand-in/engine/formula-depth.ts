/**
 * Excel lets functions be nested 64 deep, and a formula be 8,192 characters long as it is shown. The grid reads formulas by calling
 * itself, and the stack of a page ends somewhere between 1,000 and 4,000 such calls: each bracket, and each operator in a row, costs one.
 */
const DEEPEST = 256;
const MOST_OPERATORS = 1000;
const LONGEST = 32_767;

/** Whether a formula is so long or so deeply nested that reading it could end the stack. Looks at each character once. */
export function isTooDeep(formula: string): boolean {
  if (formula.length > LONGEST) return true;
  let depth = 0;
  let operators = 0;
  for (let at = 0; at < formula.length; at++) {
    const sign = formula[at]!;
    if (sign === '"') {
      const end = formula.indexOf('"', at + 1);
      if (end < 0) break;
      at = end;
    } else if ("([{".includes(sign)) {
      if (++depth > DEEPEST) return true;
    } else if (")]}".includes(sign)) depth--;
    else if ("+-*/^&<>=%@".includes(sign) && ++operators > MOST_OPERATORS) return true;
  }
  return false;
}
