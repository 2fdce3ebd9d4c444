import { escapeHtml, htmlPage } from "../help/html";
import { trials } from "./try-in-excel";

const intro =
  "None of us had Excel at hand. All of this was settled as far as it could be: against Microsoft's own libraries, on the bench, and in other readers of the same files. What would hurt most comes first: the first ten take half an hour. Each step names what should be seen. Note Excel's version (File > Account) and whatever differs.";

/** The list as a page of the guide. */
export function tryInExcelPage(base: string): string {
  const entries = trials.map(({ title, where, steps, see }) => {
    const place = where === undefined ? "" : `<p class="from">${escapeHtml(where)}</p>\n`;
    return `<section><h2>${escapeHtml(title)}</h2>\n${place}<ol>${steps.map((step) => `<li>${escapeHtml(step)}</li>`).join("\n")}</ol>\n<p class="answer">${escapeHtml(see)}</p></section>`;
  });
  return htmlPage(
    "Gylebook: what we could not try in Excel",
    [
      '<p class="place"><a href="index.html">Guide</a></p>',
      "<h1>What we could not try in Excel</h1>",
      `<p class="lead">${escapeHtml(intro)}</p>`,
      `<p>This build is for ${escapeHtml(base)}</p>`,
      ...entries,
    ].join("\n"),
  );
}

/** The list as Markdown, to read beside the sources. */
export function tryInExcelMarkdown(): string {
  const entries = trials.map(
    ({ title, where, steps, see }, index) =>
      `## ${index + 1}. ${title}${where === undefined ? "" : ` (${where})`}\n\n${steps.map((step, number) => `${number + 1}. ${step}`).join("\n")}\n\n**Should be seen:** ${see}\n`,
  );
  return `# What we could not try in Excel\n\n<!-- Written by npm run generate from try-in-excel.ts. -->\n\n${intro}\n\n${entries.join("\n")}`;
}
