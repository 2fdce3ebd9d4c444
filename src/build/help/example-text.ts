import type { AnyDescriptor, Example } from "../../functions/describe";
import { formulaText } from "../../functions/formula-text";
import { quantity, type UnitSystem } from "../../functions/quantities";
import { escapeHtml, htmlTable } from "./html";

/** A worked example: the formula as typed, what the cell then shows, and where that value comes from. */
export function exampleHtml(descriptor: AnyDescriptor, example: Example): string {
  return `<div class="example"><p><code>${escapeHtml(formulaText(descriptor, example))}</code></p>
${answerHtml(descriptor, example)}
<p class="from">${escapeHtml(example.from)}.</p></div>`;
}

function answerHtml({ result, parameters }: AnyDescriptor, { value, tolerance, arguments: typed }: Example): string {
  if (Array.isArray(value)) {
    const columns = result.kind === "grid" ? result.columns.map(escapeHtml) : [];
    return htmlTable(columns.length === value[0]?.length ? columns : [], value.map((row) => row.map((cell) => escapeHtml(String(cell)))));
  }
  const unitsAt = Object.keys(parameters as object).indexOf("units");
  const system: UnitSystem = typed[unitsAt] === "us" ? "us" : "metric";
  const unit = result.kind === "number" ? quantity(result.quantity).unit[system] : "";
  const about = tolerance !== undefined && tolerance > 1e-6 ? ` (within ${tolerance})` : "";
  return `<p class="answer">${escapeHtml(String(value))}${unit && unit !== "SG" ? ` ${escapeHtml(unit)}` : ""}${about}</p>`;
}
