import { tokenize, tokenTypes } from "@borgar/fx";

/**
 * What a formula holds that is read by the computer's regional settings.
 *
 * TEXT(x,"0.0") is: under a German locale the point parts thousands, and "yyyy" is no year (seen in LibreOffice as de-DE: "Heat 11 L"
 * for 11.4); digits alone are read alike everywhere. So is a number that a formula keeps in words: COUNTIFS(A1:A2,">=0.97") finds
 * no 1.01 there, where ">="&0.97 does, and "1.5"*1 is an error (seen in the same way).
 */
export function regionalIn(formula: string): string[] {
  const found: string[] = [];
  /** The functions that are open, and where their last argument begins. */
  const open: { name: string; from: number }[] = [];
  const tokens = tokenize(formula).filter(({ type }) => type !== tokenTypes.WHITESPACE);
  tokens.forEach(({ type, value }, at) => {
    if (type === tokenTypes.STRING && /^"[<>=]*\s*[-+]?\d*[.,:/-]\d[\d.,:/-]*%?"$/.test(value)) found.push(value);
    if (value === "(") open.push({ name: (tokens[at - 1]?.value ?? "").toUpperCase(), from: at + 1 });
    if (value === "," && open.length > 0) open.at(-1)!.from = at + 1;
    if (value !== ")") return;
    const { name, from } = open.pop()!;
    const pattern = tokens.slice(from, at).map((token) => token.value);
    if (name === "TEXT" && !/^"[0#]+"$/.test(pattern.join(""))) found.push(`TEXT with ${pattern.join("")}`);
    if (["VALUE", "NUMBERVALUE", "DATEVALUE", "TIMEVALUE", "DOLLAR"].includes(name)) found.push(name);
  });
  return found;
}
