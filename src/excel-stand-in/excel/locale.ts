import { tokenize, tokenTypes } from "@borgar/fx";

/** How Excel writes numbers and formulas in a country. Separators and names as German and French Excel have them, from memory. */
export interface Locale {
  readonly name: "en-US" | "de-DE" | "fr-FR";
  readonly decimal: string;
  readonly group: string;
  /** Between the arguments of a function. */
  readonly list: string;
  /** Between the cells of a row in an array such as {1,2;3,4}. */
  readonly arrayColumn: string;
  /** A few native functions and the two truth values; an add-in's own functions have one name everywhere. */
  readonly words: Readonly<Record<string, string>>;
}

const american: Locale = {
  name: "en-US",
  decimal: ".",
  group: ",",
  list: ",",
  arrayColumn: ",",
  words: {},
};
const german: Locale = {
  name: "de-DE",
  decimal: ",",
  group: ".",
  list: ";",
  arrayColumn: ".",
  words: { SUM: "SUMME", IF: "WENN", IFERROR: "WENNFEHLER", AND: "UND", OR: "ODER", ROUND: "RUNDEN", TRUE: "WAHR", FALSE: "FALSCH" },
};
const french: Locale = {
  name: "fr-FR",
  decimal: ",",
  group: "\u202F",
  list: ";",
  arrayColumn: ".",
  words: { SUM: "SOMME", IF: "SI", IFERROR: "SIERREUR", AND: "ET", OR: "OU", ROUND: "ARRONDI", TRUE: "VRAI", FALSE: "FAUX" },
};

export const locales: Readonly<Record<Locale["name"], Locale>> = { "en-US": american, "de-DE": german, "fr-FR": french };

/** "=IF(A1>1.5,2,3)" as the person sees it: "=WENN(A1>1,5;2;3)". Texts that are no formula stay as they are. */
export function toLocal(formula: string, locale: Locale): string {
  if (!formula.startsWith("=") || locale === american) return formula;
  let inArray = false;
  return tokenize(formula)
    .map(({ type, value }) => {
      if (value === "{" || value === "}") inArray = value === "{";
      if (type === tokenTypes.NUMBER) return value.replace(".", locale.decimal);
      if (type === tokenTypes.OPERATOR && value === ",") return inArray ? locale.arrayColumn : locale.list;
      if (type === tokenTypes.REF_STRUCT) return value.replaceAll("],[", `]${locale.list}[`);
      if (type === tokenTypes.FUNCTION || type === tokenTypes.BOOLEAN) return locale.words[value.toUpperCase()] ?? value;
      return value;
    })
    .join("");
}

/** The other way round, from what a person types. Only its signs are turned first: what is left is an American formula but for words. */
export function fromLocal(formula: string, locale: Locale): string {
  if (!formula.startsWith("=") || locale === american) return formula;
  let inArray = false;
  const turned = formula.split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/u).map((piece, index) =>
    index % 2 === 1
      ? piece
      : [...piece]
          .map((sign) => {
            if (sign === "{" || sign === "}") inArray = sign === "{";
            if (sign === locale.decimal) return ".";
            return sign === (inArray ? locale.arrayColumn : locale.list) ? "," : sign;
          })
          .join(""),
  );
  const words = new Map(Object.entries(locale.words).map(([word, local]) => [local, word]));
  return tokenize(turned.join(""))
    .map(({ value }) => words.get(value.toUpperCase()) ?? value)
    .join("");
}
