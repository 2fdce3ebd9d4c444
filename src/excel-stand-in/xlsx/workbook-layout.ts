import { partText, type PackageParts } from "./package-parts";
import { readRelationships, targetPath } from "./relationships";
import { UnreadableFileError } from "./unreadable-file-error";
import { childrenOf, descend, parseXml, type XmlElement } from "./xml";

export interface SheetEntry {
  name: string;
  part: string;
}

/** The frame of a workbook file: its workbook part and its sheets in order. */
export interface WorkbookLayout {
  part: string;
  root: XmlElement;
  sheets: SheetEntry[];
}

/** @throws {UnreadableFileError} if the parts are no workbook */
export function readLayout(parts: PackageParts): WorkbookLayout {
  const start = readRelationships(parts, "").find((one) => one.type.endsWith("/officeDocument"));
  const part = start ? targetPath("", start.target) : "xl/workbook.xml";
  const source = partText(parts, part);
  if (source === undefined) throw new UnreadableFileError("it is a ZIP archive, but not of a workbook");
  const root = parseXml(source);
  const links = readRelationships(parts, part);
  const sheets = childrenOf(descend(root, "sheets"), "sheet")
    .map(({ attributes }) => {
      const idKey = Object.keys(attributes).find((name) => name.endsWith(":id"));
      const link = links.find((one) => one.id === (idKey ? attributes[idKey] : undefined));
      return { name: attributes.name ?? "", part: link ? targetPath(part, link.target) : "", type: link?.type ?? "" };
    })
    .filter((sheet) => sheet.type.endsWith("/worksheet") && parts.has(sheet.part));
  if (sheets.length === 0) throw new UnreadableFileError("it has no worksheet");
  return { part, root, sheets: sheets.map(({ name, part: path }) => ({ name, part: path })) };
}
