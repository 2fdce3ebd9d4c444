import { escapeHtml, htmlPage } from "../help/html";
import { trials, type Trial } from "./try-in-excel";

const intro =
  "None of us had Excel at hand. All of this was settled as far as it could be: against Microsoft's own libraries, on the bench, and in other readers of the same files. What would hurt most comes first: what has its minutes beside it takes half an hour in all, the rest is for whoever has more time or another Excel. Each step names what should be seen. Note Excel's version (File > Account) and whatever differs.";

/** How long it takes, and where it matters. */
const asideOf = ({ minutes, where }: Trial): string => [minutes === undefined ? [] : `${minutes} min`, where ?? []].flat().join("; ");

/** The list as a page of the guide. */
export function tryInExcelPage(base: string): string {
  const entries = trials.map((trial) => {
    const { title, steps, see } = trial;
    const aside = asideOf(trial);
    const place = aside === "" ? "" : `<p class="from">${escapeHtml(aside)}</p>\n`;
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
    (trial, index) =>
      `## ${index + 1}. ${trial.title}${asideOf(trial) === "" ? "" : ` (${asideOf(trial)})`}\n\n${trial.steps.map((step, number) => `${number + 1}. ${step}`).join("\n")}\n\n**Should be seen:** ${trial.see}\n`,
  );
  return `# What we could not try in Excel\n\n<!-- Written by npm run generate from try-in-excel.ts. -->\n\n${intro}\n\n${entries.join("\n")}`;
}
