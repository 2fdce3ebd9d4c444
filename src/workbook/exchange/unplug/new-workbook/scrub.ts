import { elements, readXml, remove, writeXml, type Parts } from "./package-xml";

/** Empties every shared text that no cell of the sheets left shows: they held what stood on the sheets taken out. */
export function scrubTexts(parts: Parts): void {
  const document = readXml(parts, "xl/sharedStrings.xml");
  if (!document) return;
  const used = new Set<number>();
  for (const name of Object.keys(parts)) {
    if (!/^xl\/worksheets\/[^/]+\.xml$/.test(name)) continue;
    const sheet = readXml(parts, name);
    if (!sheet) continue;
    for (const cell of elements(sheet, "c"))
      if (cell.getAttribute("t") === "s") used.add(Number(elements(cell, "v")[0]?.textContent ?? NaN));
  }
  for (const [index, item] of elements(document, "si").entries()) {
    if (used.has(index)) continue;
    while (item.firstChild) item.removeChild(item.firstChild);
    item.appendChild(document.createElementNS(item.namespaceURI, "t"));
  }
  writeXml(parts, "xl/sharedStrings.xml", document);
}

/** Who made the file, where and for whom; and the authors of its notes. */
export function scrubProperties(parts: Parts): void {
  empty(parts, "docProps/core.xml", [
    "creator",
    "lastModifiedBy",
    "description",
    "keywords",
    "category",
    "subject",
    "title",
    "contentStatus",
    "lastPrinted",
  ]);
  empty(parts, "docProps/app.xml", ["Company", "Manager", "HyperlinkBase", "Template", "TotalTime", "HeadingPairs", "TitlesOfParts"]);
  for (const name of Object.keys(parts)) {
    const document = /^xl\/(worksheets\/)?comments[^/]*\.xml$|^xl\/comments\//.test(name) ? readXml(parts, name) : undefined;
    if (!document) continue;
    for (const author of elements(document, "author")) author.textContent = "";
    writeXml(parts, name, document);
  }
}

function empty(parts: Parts, name: string, properties: readonly string[]): void {
  const document = readXml(parts, name);
  if (!document) return;
  for (const property of properties) for (const element of elements(document, property)) remove(element);
  writeXml(parts, name, document);
}
