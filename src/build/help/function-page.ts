import type { AnyDescriptor, Parameter } from "../../functions/describe";
import { equationLines } from "../../functions/equation-lines";
import { placeOf, places } from "../../functions/places";
import { registry } from "../../functions/registry";
import { resultText } from "../../functions/result-text";
import { signature } from "../function-table";
import { argumentRow } from "./argument-rows";
import { exampleHtml } from "./example-text";
import { escapeHtml, htmlList, htmlPage, htmlTable } from "./html";
import { linked, pageBeside } from "./linked";
import { styleList } from "./style-list";

/** What a page has beyond its function's description. */
const further: Readonly<Record<string, readonly [title: string, body: () => string]>> = {
  "BEER.STYLE": ["The styles", styleList],
};

/** The page about one worksheet function. */
export function functionPage(descriptor: AnyDescriptor): string {
  const { id, summary, equation, result, sources, examples, cautions = [] } = descriptor;
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const section = (title: string, body: string): string => `<section><h2>${title}</h2>\n${body}\n</section>`;
  return htmlPage(
    `GYLE.${id}`,
    [
      `<p class="place"><a href="index.html">All functions</a> › <a href="index.html#${placeOf(id).toLowerCase()}">${escapeHtml(places[placeOf(id)] ?? "")}</a></p>`,
      `<h1>GYLE.${id}</h1>`,
      `<p class="lead">${linked(summary, id)}</p>`,
      `<p class="signature"><code>=GYLE.${escapeHtml(signature(descriptor))}</code></p>`,
      cautions.length === 0 ? "" : section("Take care", htmlList(cautions.map((caution: string) => linked(caution, id)))),
      section(
        "What you give it",
        htmlTable(
          ["argument", "what it is", "unit", "range", "when left out"],
          parameters.map(([key, parameter]) => argumentRow(key, parameter, id)),
          "arguments",
        ),
      ),
      section("What you get", `<p>${linked(resultText(result), id)}</p>`),
      section("Examples", examples.map((example) => exampleHtml(descriptor, example)).join("\n")),
      section("Equation", equationHtml(equation, id)),
      ...(further[id] ? [section(further[id][0], further[id][1]())] : []),
      section("Where it comes from", htmlList(sources.map(({ cite, where }) => `${escapeHtml(cite)}: ${escapeHtml(where)}`))),
      parameters.some(([key]) => key === "units")
        ? '<p class="from">With <code>units</code> "us", every amount that goes in or out is in the second unit named.</p>'
        : "",
      neighbours(id),
    ]
      .filter((part) => part !== "")
      .join("\n"),
  );
}

function equationHtml(equation: string, id: string): string {
  const { lines, legend } = equationLines(equation);
  const letters = legend.map(({ symbol, meaning }) => `<dt>${symbol}</dt><dd>${escapeHtml(meaning)}</dd>`).join("");
  return `<p class="equation">${lines.map((line) => linked(line, id)).join(";<br>")}</p>${letters === "" ? "" : `<dl class="letters">${letters}</dl>`}`;
}

/** The way to what else there is at the same place in the brewery. */
function neighbours(id: string): string {
  const others = registry.filter((other) => other.id !== id && placeOf(other.id) === placeOf(id));
  const links = others.map((other) => `<a href="${pageBeside(other.id)}">${other.id}</a>`);
  return links.length === 0
    ? ""
    : `<nav class="place" aria-label="More of the same place"><p>${escapeHtml(places[placeOf(id)] ?? "")}, also: ${links.join(" · ")}</p></nav>`;
}
