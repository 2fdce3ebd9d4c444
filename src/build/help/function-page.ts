import type { AnyDescriptor, Parameter } from "../../functions/describe";
import { placeOf, places } from "../../functions/places";
import { bothUnits } from "../../functions/quantities";
import { signature } from "../function-table";
import { argumentRow } from "./argument-rows";
import { exampleHtml } from "./example-text";
import { escapeHtml, htmlList, htmlPage, htmlTable } from "./html";

/** The page about one worksheet function. */
export function functionPage(descriptor: AnyDescriptor): string {
  const { id, summary, equation, sources, examples, cautions = [] } = descriptor;
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const section = (title: string, body: string): string => `<section><h2>${title}</h2>\n${body}\n</section>`;
  return htmlPage(
    `GYLE.${id}`,
    [
      `<p class="place"><a href="index.html">All functions</a> › <a href="index.html#${placeOf(id).toLowerCase()}">${escapeHtml(places[placeOf(id)] ?? "")}</a></p>`,
      `<h1>GYLE.${id}</h1>`,
      `<p class="lead">${escapeHtml(summary)}</p>`,
      `<p class="signature"><code>=GYLE.${escapeHtml(signature(descriptor))}</code></p>`,
      cautions.length === 0 ? "" : section("Take care", htmlList(cautions.map(escapeHtml))),
      section("What you give it", htmlTable(["argument", "what it is", "unit", "range", "when left out"], parameters.map(([key, parameter]) => argumentRow(key, parameter)))),
      section("What you get", `<p>${resultText(descriptor)}</p>`),
      section("Examples", examples.map((example) => exampleHtml(descriptor, example)).join("\n")),
      section("Equation", `<p class="equation">${escapeHtml(equation)}</p>`),
      section("Where it comes from", htmlList(sources.map(({ cite, where }) => `${escapeHtml(cite)}: ${escapeHtml(where)}`))),
      parameters.some(([key]) => key === "units") ? '<p class="from">With <code>units</code> "us", every amount that goes in or out is in the second unit named.</p>' : "",
    ].filter((part) => part !== "").join("\n"),
  );
}

function resultText({ result }: AnyDescriptor): string {
  const unit = result.kind === "number" ? bothUnits(result.quantity) : "";
  const columns = result.kind === "grid" ? ` Columns: ${result.columns.map(escapeHtml).join(", ")}. The answer spills over the cells to the right and below.` : "";
  return `${escapeHtml(result.doc)}${unit ? ` In ${escapeHtml(unit)}.` : ""}${columns}`;
}
