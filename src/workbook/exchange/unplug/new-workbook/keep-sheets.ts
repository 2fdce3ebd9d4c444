import { unzipSync, zipSync } from "fflate";
import { ToldInFull } from "../../../grid/words/told-in-full";
import { writingMark } from "../../../grid/write/writing-mark";
import { elements, readXml, relationships, relationshipsOf, remove, writeXml, type Parts } from "./package-xml";
import { scrubProperties, scrubTexts } from "./scrub";

const workbookPart = "xl/workbook.xml";
/** What of the package itself and of the workbook goes along, besides the sheets kept and what these need. */
const packageKinds = ["officeDocument", "core-properties", "extended-properties"];
const workbookKinds = ["worksheet", "styles", "theme", "sharedStrings", "sheetMetadata"];
/** What of a sheet stays behind: conversations with names in them, and printers' own settings. */
const leftOfSheets = ["threadedComment", "printerSettings", "customProperty"];

/** A workbook's file from which the new workbook cannot be made; nothing was changed. */
export class UnreadableWorkbook extends ToldInFull {
  override readonly name = "UnreadableWorkbook";
}

/**
 * The same .xlsx with some of its sheets only: all that belongs to the others, to the workbook's history and to its
 * author is taken out, down to texts that no cell left shows.
 *
 * @param bytes a workbook as Excel saves it
 * @param sheetNames sheets to keep, in the order of the tabs they have
 */
export function keepSheets(bytes: Uint8Array, sheetNames: readonly string[]): Uint8Array {
  const parts: Parts = unzipSync(bytes);
  const workbook = readXml(parts, workbookPart);
  if (!workbook) throw new UnreadableWorkbook("The workbook’s own file could not be read. Nothing was changed.");
  const all = elements(workbook, "sheet");
  const isKept = all.map((sheet) => sheetNames.includes(sheet.getAttribute("name") ?? ""));
  if (isKept.filter(Boolean).length !== sheetNames.length)
    throw new UnreadableWorkbook("The copies are not in the workbook’s own file. Nothing was changed.");

  const keptIds = new Set(all.filter((_, index) => isKept[index]).map((sheet) => relationshipId(sheet)));
  keepRelationships(parts, "", ({ kind }) => packageKinds.includes(kind));
  keepRelationships(parts, workbookPart, ({ id, kind }) => workbookKinds.includes(kind) && (kind !== "worksheet" || keptIds.has(id)));
  for (const { target } of relationships(parts, workbookPart).list) {
    if (target?.startsWith("xl/worksheets/")) keepRelationships(parts, target, ({ kind }) => !leftOfSheets.includes(kind));
  }
  trimWorkbook(parts, workbook, isKept);
  dropUnreached(parts);
  scrubTexts(parts);
  scrubProperties(parts);
  return zipSync(parts, { level: 6 });
}

const relationshipId = (sheet: { attributes: ArrayLike<{ localName: string | null; value: string }> }): string =>
  Array.from(sheet.attributes).find(({ localName }) => localName === "id")?.value ?? "";

function keepRelationships(parts: Parts, part: string, keep: (relationship: { id: string; kind: string }) => boolean): void {
  const { document, list } = relationships(parts, part);
  if (!document) return;
  for (const relationship of list) if (!keep(relationship)) remove(relationship.element);
  writeXml(parts, relationshipsOf(part), document);
}

/** The list of sheets, the names that speak of them, and nothing of what belonged to the others. */
function trimWorkbook(parts: Parts, workbook: NonNullable<ReturnType<typeof readXml>>, isKept: readonly boolean[]): void {
  const sheets = elements(workbook, "sheet");
  const gone = sheets.filter((_, index) => !isKept[index]).map((sheet) => (sheet.getAttribute("name") ?? "").toLowerCase());
  sheets.forEach((sheet, index) => (isKept[index] ? sheet.removeAttribute("state") : remove(sheet)));
  const places = isKept.map((kept, index) => (kept ? isKept.slice(0, index).filter(Boolean).length : -1));
  for (const name of elements(workbook, "definedName")) {
    const local = name.getAttribute("localSheetId");
    const place = local === null ? undefined : places[Number(local)];
    const spokenOf = Array.from((name.textContent ?? "").matchAll(/(?:'((?:[^']|'')+)'|([^\s'!,()]+))!/g), ([, quoted, bare]) =>
      (quoted ?? bare ?? "").replaceAll("''", "'").toLowerCase(),
    );
    if (place === -1 || name.getAttribute("name") === writingMark || spokenOf.some((sheet) => gone.includes(sheet) || sheet.includes("[")))
      remove(name);
    else if (place !== undefined) name.setAttribute("localSheetId", String(place));
  }
  for (const names of elements(workbook, "definedNames")) if (elements(names, "definedName").length === 0) remove(names);
  for (const view of elements(workbook, "workbookView"))
    for (const attribute of ["activeTab", "firstSheet"]) view.removeAttribute(attribute);
  for (const unwanted of ["externalReferences", "pivotCaches", "fileSharing", "workbookProtection", "customWorkbookViews", "extLst"])
    for (const element of elements(workbook, unwanted)) remove(element);
  for (const properties of elements(workbook, "workbookPr")) properties.removeAttribute("codeName");
  for (const [index, sheet] of elements(workbook, "sheet").entries()) selectOnly(parts, sheet, index === 0);
  writeXml(parts, workbookPart, workbook);
}

/** The first sheet is in front, and no two are selected together. */
function selectOnly(parts: Parts, sheet: Parameters<typeof relationshipId>[0], first: boolean): void {
  const part = relationships(parts, workbookPart).list.find(({ id }) => id === relationshipId(sheet))?.target;
  const document = part === undefined ? undefined : readXml(parts, part);
  if (part === undefined || !document) return;
  for (const view of elements(document, "sheetView")) {
    if (first) view.setAttribute("tabSelected", "1");
    else view.removeAttribute("tabSelected");
  }
  writeXml(parts, part, document);
}

/** Removes every part that nothing leads to any more, from the package and from its table of contents. */
function dropUnreached(parts: Parts): void {
  const reached = new Set<string>(["[Content_Types].xml", relationshipsOf("")]);
  const waiting = relationships(parts, "").list.map(({ target }) => target);
  for (let part = waiting.pop(); waiting.length > 0 || part !== undefined; part = waiting.pop()) {
    if (part === undefined || reached.has(part) || parts[part] === undefined) continue;
    reached.add(part);
    if (parts[relationshipsOf(part)]) reached.add(relationshipsOf(part));
    waiting.push(...relationships(parts, part).list.map(({ target }) => target));
  }
  for (const name of Object.keys(parts)) if (!reached.has(name)) delete parts[name];
  const contents = readXml(parts, "[Content_Types].xml");
  if (!contents) return;
  for (const override of elements(contents, "Override"))
    if (!reached.has((override.getAttribute("PartName") ?? "").slice(1))) remove(override);
  writeXml(parts, "[Content_Types].xml", contents);
}
