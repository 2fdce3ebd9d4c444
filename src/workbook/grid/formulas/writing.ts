import { tokenize, tokenTypes } from "@borgar/fx";

/**
 * How somebody's spreadsheet writes formulas. Where the decimal sign is a comma, arguments stand between semicolons, and the
 * columns of an array constant between points (from memory; Excel offers only the decimal sign).
 */
export type DecimalSign = "." | ",";

/** `=GYLE.BEER.ABV(1.048, 1.010)` as it is written there: `=GYLE.BEER.ABV(1,048; 1,010)`. */
export function asWritten(formula: string, decimal: DecimalSign): string {
  if (decimal === ".") return formula;
  let inArray = false;
  return tokenize(formula)
    .map(({ type, value }) => {
      if (value === "{" || value === "}") inArray = value === "{";
      if (type === tokenTypes.NUMBER) return value.replace(".", ",");
      return type === tokenTypes.OPERATOR && value === "," ? (inArray ? "." : ";") : value;
    })
    .join("");
}

/** Words about formulas, with each call of ours in them as it is written there. */
export const callsAsWritten = (words: string, decimal: DecimalSign): string =>
  words.replace(/\bGYLE\.[A-Z.]+\((?:"[^"]*"|[^()"])*\)/g, (call) => asWritten(`=${call}`, decimal).slice(1));

/** What is typed there, as formulas are kept everywhere: `MAX(1,5;A2)` is `MAX(1.5,A2)`. Words in quotes stay as they are. */
export function asKept(typed: string, decimal: DecimalSign): string {
  let inArray = false;
  return typed
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/u)
    .map((piece, index) =>
      index % 2 === 1
        ? piece
        : piece.replaceAll(/[{},;.]/g, (sign) => {
            if (sign === "{" || sign === "}") inArray = sign === "{";
            if (sign === ";") return inArray ? ";" : ",";
            if (decimal === ".") return sign;
            if (sign === ",") return ".";
            return sign === "." && inArray ? "," : sign;
          }),
    )
    .join("");
}
