import { cellAddress, parseBlock } from "./addresses";
import { partText, type PackageParts } from "./package-parts";
import { readRelationships, relationshipsPath, targetPath } from "./relationships";
import { UnreadableFileError } from "./unreadable-file-error";
import type { WorkbookLayout } from "./workbook-layout";

/** Links that must lead to a part: without it cells, their meaning, or what stands beside them would be lost in silence. */
const NEEDED = /\/(worksheet|sharedStrings|styles|sheetMetadata|table|comments|drawing|chart)$/;

/**
 * Gives parts the names by which others call them. Names of parts are the same whatever the case (ECMA-376 part 2, 6.2.2.3), and a
 * link may write a letter as %20; everybody else here looks them up as they are written.
 */
export function alignNames(parts: PackageParts): void {
  const key = (path: string): string => decoded(path).toLowerCase();
  const written = new Map([...parts.keys()].map((path) => [key(path), path]));
  const rename = (from: string, to: string): void => {
    const data = parts.get(from);
    if (data === undefined || from === to) return;
    parts.delete(from);
    parts.set(to, data);
    written.set(key(to), to);
  };
  const seen = new Set<string>();
  const visit = (part: string): void => {
    if (seen.has(part)) return;
    seen.add(part);
    for (const { external, target } of readRelationships(parts, part)) {
      const wanted = targetPath(part, target);
      if (external) continue;
      const present = written.get(key(wanted));
      if (present !== undefined) {
        rename(written.get(key(relationshipsPath(present))) ?? "", relationshipsPath(wanted));
        rename(present, wanted);
      }
      visit(wanted);
    }
  };
  visit("");
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

/** @throws {UnreadableFileError} naming the first part that a needed link leads to and that is not there */
export function refuseMissingParts(parts: PackageParts, { part }: WorkbookLayout): void {
  const seen = new Set<string>();
  const visit = (from: string): void => {
    seen.add(from);
    for (const { type, external, target } of readRelationships(parts, from)) {
      const path = targetPath(from, target);
      if (external || !NEEDED.test(type) || seen.has(path)) continue;
      if (!parts.has(path)) throw new UnreadableFileError(`it is damaged: its part ${path} is missing`);
      visit(path);
    }
  };
  visit(part);
}

/** A cell that holds a text holds its number in the list of texts; the number stands in `<v>`. */
const CELL_OF_TEXT =
  /<(?:\w+:)?c\s([^>]*?\bt\s*=\s*["']s["'][^>]*)>(?:\s*<(?:\w+:)?f\b[^>]*(?:\/>|>[^<]*<\/(?:\w+:)?f>))?\s*<(?:\w+:)?v>([^<]*)</g;

/** @throws {UnreadableFileError} naming the first cell whose text, or whose look, the file does not hold */
export function refuseLostTexts(parts: PackageParts, { part, sheets }: WorkbookLayout): void {
  const links = readRelationships(parts, part);
  const textsPart = links.find(({ type }) => type.endsWith("/sharedStrings"));
  const texts = textsPart ? (partText(parts, targetPath(part, textsPart.target)) ?? "") : "";
  const count = texts.match(/<(?:\w+:)?si[\s/>]/g)?.length ?? 0;
  const hasStyles = links.some(({ type }) => type.endsWith("/styles"));
  for (const sheet of sheets) {
    const xml = partText(parts, sheet.part) ?? "";
    for (const [, attributes = "", index = ""] of xml.matchAll(CELL_OF_TEXT)) {
      if (/^\s*\d+\s*$/.test(index) && Number(index) < count) continue;
      const number = Number(index) + 1;
      throw new UnreadableFileError(`it is damaged: text ${number} of cell ${cellNamed(attributes)} on “${sheet.name}” is not in it`);
    }
    if (!hasStyles && /<(?:\w+:)?c\s[^>]*\bs\s*=\s*["'][1-9]/.test(xml))
      throw new UnreadableFileError(`it is damaged: how the cells of “${sheet.name}” look, dates among them, is not in it`);
  }
}

function cellNamed(attributes: string): string {
  const at = parseBlock(/\br\s*=\s*["']([^"']*)/.exec(attributes)?.[1] ?? "");
  return at ? cellAddress(at.startRow, at.startColumn) : "somewhere";
}
