import type { AnyDescriptor } from "../../functions/describe";
import { placeOf, places } from "../../functions/places";
import { searchWords } from "../../functions/search-words";
import { escapeHtml, htmlPage } from "./html";
import { pageBeside } from "./linked";

/** The list of all functions, by place in the brewery. */
export function indexPage(registry: readonly AnyDescriptor[]): string {
  const sections = Object.entries(places).map(([place, title]) => {
    const entries = registry
      .filter(({ id }) => placeOf(id) === place)
      .map(
        ({ id, summary }) =>
          `<dt><a href="${pageBeside(id)}">GYLE.${id}</a></dt><dd>${escapeHtml(summary)}<br><span class="other-words">${escapeHtml(searchWords[id] ?? "")}</span></dd>`,
      );
    return entries.length === 0
      ? ""
      : `<section id="${place.toLowerCase()}"><h2>${escapeHtml(title)}</h2>\n<dl>${entries.join("\n")}</dl></section>`;
  });
  return htmlPage(
    "Gylebook: all functions",
    [
      "<h1>Gylebook: all functions</h1>",
      '<p class="lead">Type =GYLE. into a cell, then the place in the brewery, and Excel lists what helps there.</p>',
      placesNav,
      conventions,
      ...sections.filter((part) => part !== ""),
    ].join("\n"),
  );
}

const placesNav = `<nav class="place" aria-label="Places in the brewery"><p>${Object.entries(places)
  .map(([place, title]) => `<a href="#${place.toLowerCase()}">${escapeHtml(title.split(":")[0] ?? "")}</a>`)
  .join(" · ")}</p></nav>`;

const conventions = `<section><h2>What holds for all of them</h2>
<ul>
<li>Gravity is specific gravity at 20 °C (1.050). For degrees Plato write GYLE.WORT.SG(12) in its place.</li>
<li>The examples are written with a decimal point and commas between arguments. Where your Excel has a decimal comma, type semicolons between them, as in =GYLE.BEER.ABV(1,048; 1,010).</li>
<li>A cell that is not filled in yet gives an empty answer, not an error.</li>
<li>Where one cell is asked for you may give a column or a row; the answer then spills beside it.</li>
<li>#VALUE!: something typed cannot be right. #N/A: it can be, but the source does not reach so far. #NUM!: there is no finite answer. The task pane says what is wrong and how to put it right.</li>
</ul></section>`;
