import type { ResultKind } from "./describe";
import { bothUnits } from "./quantities";

/** What a function answers, with its unit unless the words name it already, and how a block of cells is laid out. */
export function resultText(result: ResultKind): string {
  if (result.kind === "grid")
    return `${result.doc} Columns: ${result.columns.join(", ")}. The answer spills over the cells to the right and below.`;
  if (result.kind === "text" || result.quantity === "date" || result.quantity === "gravity") return result.doc;
  const unit = bothUnits(result.quantity);
  return unit === "" || result.doc.includes(unit) ? result.doc : `${result.doc} In ${unit}.`;
}
