import { quote } from "./plain/formula-parts";

/** From this length on a text cannot be taken for a number or a date, so it may stand in the cell as it is. */
const surelyAText = 200;
const error = /^#(N\/A|VALUE!|NUM!|DIV\/0!|REF!|NULL!|SPILL!|CALC!|FIELD!|CONNECT!|BLOCKED!|UNKNOWN!)$/;
const notThereYet = /^#(NAME\?|BUSY!|GETTING_DATA)$/;

/** Whether a cell has no result yet: then there is no value to write in place of its formula. */
export const isUncalculated = (value: unknown): boolean => typeof value === "string" && notThereYet.test(value);

/**
 * What is written in place of a formula whose value is to stay. Texts become small formulas, `="12"`, so that none is
 * taken for a number, a date or a formula; an empty text stays one, which an empty cell is not; an error stays an error.
 */
export function frozenValue(value: unknown): string | number | boolean {
  if (typeof value === "number" || typeof value === "boolean") return value;
  const text = typeof value === "string" ? value : "";
  if (error.test(text)) return "=NA()";
  return text.length > surelyAText && /^\p{L}/u.test(text) ? text : `=${quote(text)}`;
}
