import { setPartText, type PackageParts } from "./package-parts";
import { readRelationships, relationshipsPath, writeRelationships, XML_START } from "./relationships";
import { CONTENT_TYPES, contentTypeOf, declarePart } from "./part-copies";
import { childrenOf, descend, serializeXml, type XmlElement } from "./xml";
import type { SheetEntry, WorkbookLayout } from "./workbook-layout";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const EMPTY_SHEET = `${XML_START}<worksheet xmlns="${MAIN}"><sheetData/></worksheet>`;
const SHEET_LINK = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet";
const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
/** Parts that are not passed on: macros would need another file name, the rest is written anew or no longer true. */
const LEFT_OUT = /^(xl\/(drawings\/drawing|charts\/|vbaProject|calcChain)|docProps\/)|^xl\/worksheets\/(?!_rels)|^xl\/worksheets\/_rels/i;
const KEPT_OUT_OF_SHEETS = /\/(drawing|printerSettings)$/;

/**
 * The opened file rebuilt so that its sheets stand in the order they have now, with empty ones where sheets are new.
 * hucre matches parts to sheets by number: `sheet2.xml` has to belong to the second sheet, or links end up elsewhere.
 */
export function arrangeParts(parts: PackageParts, layout: WorkbookLayout, wanted: readonly (SheetEntry | undefined)[]): PackageParts {
  const result: PackageParts = new Map([...parts].filter(([path]) => !LEFT_OUT.test(path)));
  const links = readRelationships(parts, layout.part).filter(
    (one) => !/\/(worksheet|chartsheet|dialogsheet|vbaProject|calcChain)$/.test(one.type),
  );
  const sheetElements: XmlElement[] = [];
  wanted.forEach((sheet, index) => {
    const path = `xl/worksheets/sheet${index + 1}.xml`;
    const id = `gyleSheet${index + 1}`;
    if (sheet) {
      result.set(path, parts.get(sheet.part)!);
      writeRelationships(result, path, linksOfSheet(parts, sheet.part));
    } else setPartText(result, path, EMPTY_SHEET);
    if (contentTypeOf(result, path) !== SHEET_TYPE) declarePart(result, path, SHEET_TYPE);
    links.push({ id, type: SHEET_LINK, target: `/${path}`, external: false });
    sheetElements.push({
      name: "sheet",
      attributes: { name: `sheet ${index + 1}`, sheetId: String(index + 1), "r:id": id },
      children: [],
      text: "",
    });
  });
  writeRelationships(result, layout.part, links);
  setPartText(result, layout.part, XML_START + serializeXml(withSheets(layout.root, sheetElements)));
  if (!result.has(CONTENT_TYPES)) throw new Error("a workbook without a list of content types");
  return result;
}

/** The parts with a workbook that lists its worksheets only: sheets of charts the library takes for sheets whose part is missing. */
export function worksheetsOnly(parts: PackageParts, layout: WorkbookLayout): PackageParts {
  if (layout.others.length === 0) return parts;
  const all = childrenOf(descend(layout.root, "sheets"), "sheet");
  const kept = all.filter(({ attributes }) => !layout.others.includes(attributes.name ?? ""));
  const names = descend(layout.root, "definedNames");
  const result: PackageParts = new Map(parts);
  const workbook = withSheets(layout.root, kept, names && { ...names, children: renumbered(names.children, all, kept) });
  setPartText(result, layout.part, XML_START + serializeXml(workbook));
  return result;
}

/** Names of single sheets count the sheets of a workbook. */
function renumbered(names: readonly XmlElement[], all: readonly XmlElement[], kept: readonly XmlElement[]): XmlElement[] {
  return names.flatMap((name) => {
    const { localSheetId } = name.attributes;
    if (localSheetId === undefined) return name;
    const position = kept.indexOf(all[Number(localSheetId)]!);
    return position < 0 ? [] : { ...name, attributes: { ...name.attributes, localSheetId: String(position) } };
  });
}

/** Links of a sheet, without its drawing (that is written apart) and settings of printers that are not here. */
const linksOfSheet = (parts: PackageParts, part: string): ReturnType<typeof readRelationships> =>
  parts.has(relationshipsPath(part)) ? readRelationships(parts, part).filter((one) => !KEPT_OUT_OF_SHEETS.test(one.type)) : [];

/** The workbook's own part with other sheets and other names; without any where they are written from the snapshot. */
function withSheets(root: XmlElement, sheets: XmlElement[], names?: XmlElement): XmlElement {
  const plain = (element: XmlElement): string => element.name.slice(element.name.indexOf(":") + 1);
  return {
    ...root,
    attributes: { ...root.attributes, "xmlns:r": "http://schemas.openxmlformats.org/officeDocument/2006/relationships" },
    children: root.children
      .flatMap((child) => (plain(child) === "definedNames" ? (names ?? []) : child))
      .map((child) =>
        plain(child) === "sheets"
          ? { ...child, children: sheets.map((sheet) => ({ ...sheet, name: child.name.replace(/sheets$/, "sheet") })) }
          : child,
      ),
  };
}
