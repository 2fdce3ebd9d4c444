import { policies } from "../policies.mjs";

/** Text as HTML text or attribute value. */
export function escapeHtml(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}

/** A table; the cells are HTML already. On a narrow screen one with a name puts each cell under its heading. */
export function htmlTable(headings: readonly string[], rows: readonly (readonly string[])[], name = ""): string {
  const head = headings.length === 0 ? "" : `<thead><tr>${headings.map((cell) => `<th scope="col">${cell}</th>`).join("")}</tr></thead>`;
  const label = (column: number): string => (name === "" || headings[column] === undefined ? "" : ` data-heading="${headings[column]}"`);
  const body = rows.map((cells) => `<tr>${cells.map((cell, column) => `<td${label(column)}>${cell}</td>`).join("")}</tr>`).join("\n");
  return `<table${name === "" ? "" : ` class="${name}"`}>${head}<tbody>${body}</tbody></table>`;
}

export const htmlList = (items: readonly string[]): string => `<ul>${items.map((item) => `<li>${item}</li>`).join("\n")}</ul>`;

/** A whole page with our own style sheet and no script. `toTop`: the way from the page's folder to the add-in's. */
export function htmlPage(title: string, body: string, toTop = "../"): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policies.reading}">
<title>${escapeHtml(title)}</title>
<link rel="icon" href="${toTop}assets/icon-32.png">
<link rel="stylesheet" href="${toTop}help/help.css">
</head>
<body>
<main>
${body}
</main>
</body>
</html>
`;
}
