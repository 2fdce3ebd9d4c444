import { tradeWords } from "../../functions/trade-words";
import { escapeHtml, htmlPage } from "./html";

/** The terms of the trade in the order of the brewing day, for somebody who has never brewed. */
export function wordsPage(): string {
  const entries = Object.values(tradeWords).map(({ term, means }) => `<dt>${escapeHtml(term)}</dt><dd>${escapeHtml(means)}</dd>`);
  return htmlPage(
    "Gylebook: words of the trade",
    [
      "<h1>Words of the trade</h1>",
      '<p class="lead">What the sheets and screens call things, in the order of the brewing day.</p>',
      `<dl>${entries.join("\n")}</dl>`,
      '<p class="place"><a href="index.html">All functions</a></p>',
    ].join("\n"),
  );
}
