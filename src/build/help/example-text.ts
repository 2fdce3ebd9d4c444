import type { AnyDescriptor, Example } from "../../functions/describe";
import { exampleAnswer, exampleOrigin, exampleUnit } from "../../functions/example-answer";
import { formulaText } from "../../functions/formula-text";
import { escapeHtml, htmlTable } from "./html";

/** A worked example: the formula as typed, what the cell then shows, and where that value comes from. */
export function exampleHtml(descriptor: AnyDescriptor, example: Example): string {
  return `<div class="example"><p><code>${escapeHtml(formulaText(descriptor, example))}</code></p>
${answerHtml(descriptor, example)}
<p class="from">${escapeHtml(exampleOrigin(descriptor, example))}.</p></div>`;
}

function answerHtml(descriptor: AnyDescriptor, example: Example): string {
  const { result } = descriptor;
  const cells = exampleAnswer(descriptor, example);
  if (result.kind === "grid") {
    const columns = result.columns.map(escapeHtml);
    return htmlTable(
      columns.length === cells[0]?.length ? columns : [],
      cells.map((row) => row.map(escapeHtml)),
    );
  }
  return `<p class="answer">${escapeHtml(`${cells[0]?.[0] ?? ""} ${exampleUnit(descriptor, example)}`.trim())}</p>`;
}
