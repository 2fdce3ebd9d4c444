import { cpSync, existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { escapeHtml, htmlPage } from "../help/html";
import { root } from "../run.mjs";
import { guidePages, type GuidePage, type GuideSection } from "./pages";
import { pictures, type PictureName } from "./pictures";
import { tryInExcelPage } from "./try-in-excel-page";

/** Where the committed pictures lie. */
export const pictureFolder = path.join(root, "src/build/guide/pictures");

/** The guide as plain pages: `guide/` in the folder given. */
export function writeGuide(folder: string, base: string): void {
  const guide = path.join(folder, "guide");
  rmSync(guide, { recursive: true, force: true });
  mkdirSync(guide, { recursive: true });
  for (const page of guidePages) writeFileSync(path.join(guide, page.file), pageHtml(page));
  writeFileSync(path.join(guide, "index.html"), indexHtml());
  writeFileSync(path.join(guide, "try-in-excel.html"), tryInExcelPage(base));
  for (const name of Object.keys(pictures)) {
    const file = path.join(pictureFolder, `${name}.png`);
    if (existsSync(file)) cpSync(file, path.join(guide, `${name}.png`));
  }
}

function indexHtml(): string {
  const entries = guidePages.map(({ file, title, lead }) => `<dt><a href="${file}">${title}</a></dt><dd>${lead}</dd>`).join("\n");
  return htmlPage(
    "Gylebook: guide",
    `<h1>Gylebook: guide</h1>
<p class="lead">Three ways to use it; each stands on its own.</p>
<dl>${entries}</dl>
<section><h2>More</h2>
<ul><li><a href="../install.html">Put Gylebook into your Excel</a></li>
<li><a href="../bench/">The bench: a spreadsheet in your browser, without Excel</a></li>
<li><a href="../help/words.html">Words of the trade</a>, explained</li>
<li><a href="../help/index.html">All functions</a></li>
<li><a href="try-in-excel.html">What we could not try in Excel</a>: a list for somebody who has it</li></ul></section>`,
  );
}

function pageHtml({ title, lead, sections }: GuidePage): string {
  return htmlPage(
    `Gylebook: ${title}`,
    [
      `<p class="place"><a href="index.html">Guide</a> · <a href="../help/words.html">Words of the trade</a></p>`,
      `<h1>${title}</h1>`,
      `<p class="lead">${lead}</p>`,
      ...sections.map(sectionHtml),
    ].join("\n"),
  );
}

function sectionHtml({ title, paragraphs, steps, picture }: GuideSection): string {
  const numbered = steps === undefined ? "" : `<ol>${steps.map((step) => `<li>${step}</li>`).join("\n")}</ol>`;
  return `<section><h2>${title}</h2>\n${paragraphs.map((text) => `<p>${text}</p>`).join("\n")}${numbered}${picture === undefined ? "" : figure(picture)}</section>`;
}

const figure = (name: PictureName): string =>
  `\n<p><a href="${name}.png"><img class="picture" src="${name}.png" alt="${escapeHtml(pictures[name])}"></a></p>`;
