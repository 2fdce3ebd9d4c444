import type { ResultKind } from "../../../functions/describe";
import { fromCoreText } from "./units";
import { guardOf } from "./guard";
import type { PlainArguments } from "./plain-arguments";
import type { Place, PlainForm } from "./plain-form";

/**
 * One cell of a call as a plain formula: blank while an argument is not filled in, #N/A where one is outside its limits
 * or the sum has no answer, else the sum in the brewer's unit.
 */
export function plainCell(form: PlainForm, x: PlainArguments, place: Place): string {
  const { blanks, tests } = guardOf(x);
  const result = x.descriptor.result as ResultKind;
  const conditions = [...tests, ...(form.holds?.(x) ?? [])];
  const sum = form.sum(x, place);
  const shown = result.kind === "number" ? fromCoreText(result.quantity, sum, x.units) : sum;
  // As with the call itself, an error stands in the first cell of a grid alone.
  const refused = place.row === 0 && place.column === 0 ? "NA()" : '""';
  const answer = conditions.length === 0 ? shown : `IF(${conditions.length === 1 ? conditions[0] : `AND(${conditions.join(",")})`},${shown},${refused})`;
  if (blanks.length === 0) return answer;
  return `IF(${blanks.length === 1 ? blanks[0] : `OR(${blanks.join(",")})`},"",${answer})`;
}

/** How many cells a grid's answer fills. */
export const gridSize = (form: PlainForm, x: PlainArguments): { rows: number; columns: number } => form.size?.(x) ?? { rows: 1, columns: 1 };

