import { partText, type PackageParts } from "./package-parts";
import { readRelationships, relationshipsPath, targetPath } from "./relationships";
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
  /** The names of its sheets that hold no cells, such as those of a single chart. */
  others: string[];
}

/** @throws {UnreadableFileError} if the parts are no workbook */
export function readLayout(parts: PackageParts): WorkbookLayout {
  const start = readRelationships(parts, "").find((one) => one.type.endsWith("/officeDocument"));
  const part = start ? targetPath("", start.target) : "xl/workbook.xml";
  const source = partText(parts, part);
  if (source === undefined) throw new UnreadableFileError("it is a ZIP archive, but not of a workbook");
  const root = parseXml(source);
  if (!parts.has(relationshipsPath(part))) throw missing(relationshipsPath(part));
  const links = readRelationships(parts, part);
  const all = childrenOf(descend(root, "sheets"), "sheet").map(({ attributes }) => {
    const idKey = Object.keys(attributes).find((name) => name.endsWith(":id"));
    const link = links.find((one) => one.id === (idKey ? attributes[idKey] : undefined));
    const name = attributes.name ?? "";
    if (!link) throw new UnreadableFileError(`it is damaged: nothing leads to its sheet “${name}”`);
    return { name, part: targetPath(part, link.target), type: link.type };
  });
  refuseTwins(all.map(({ name }) => name));
  const others = all.filter((sheet) => !sheet.type.endsWith("/worksheet")).map(({ name }) => name);
  const sheets = all.filter((sheet) => sheet.type.endsWith("/worksheet"));
  for (const sheet of sheets) if (!parts.has(sheet.part)) throw missing(sheet.part);
  if (sheets.length === 0) throw new UnreadableFileError("it has no worksheet");
  return { part, root, sheets: sheets.map(({ name, part: path }) => ({ name, part: path })), others };
}

const missing = (path: string): UnreadableFileError => new UnreadableFileError(`it is damaged: its part ${path} is missing`);

/** Formulas could not tell which of two is meant; capitals make no difference. */
function refuseTwins(names: readonly string[]): void {
  const seen = new Map<string, string>();
  for (const name of names) {
    const before = seen.get(name.toLowerCase());
    if (before !== undefined)
      throw new UnreadableFileError(
        before === name
          ? `two of its sheets are called “${name}”`
          : `two of its sheets are called “${before}” and “${name}”, which is one name`,
      );
    seen.set(name.toLowerCase(), name);
  }
}
