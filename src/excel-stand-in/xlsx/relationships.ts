import { childrenOf, escapeXml, parseXml } from "./xml";
import { partText, setPartText, type PackageParts } from "./package-parts";

/** A link from one part of a workbook file to another, or to the outside. */
export interface Relationship {
  id: string;
  type: string;
  target: string;
  external: boolean;
}

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";
export const officeRelation = (kind: string): string => OFFICE + kind;
export const XML_START = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

/** Where the relationships of a part are kept; the root's are those of "". */
export function relationshipsPath(part: string): string {
  const slash = part.lastIndexOf("/");
  return `${part.slice(0, slash + 1)}_rels/${part.slice(slash + 1)}.rels`;
}

export function readRelationships(parts: PackageParts, part: string): Relationship[] {
  const source = partText(parts, relationshipsPath(part));
  if (source === undefined) return [];
  return childrenOf(parseXml(source), "Relationship").map(({ attributes }) => ({
    id: attributes.Id ?? "",
    type: attributes.Type ?? "",
    target: attributes.Target ?? "",
    external: attributes.TargetMode === "External",
  }));
}

export function writeRelationships(parts: PackageParts, part: string, relationships: readonly Relationship[]): void {
  const path = relationshipsPath(part);
  if (relationships.length === 0) return void parts.delete(path);
  const items = relationships
    .map(
      (one) =>
        `<Relationship Id="${escapeXml(one.id)}" Type="${escapeXml(one.type)}" ` +
        `Target="${escapeXml(one.target)}"${one.external ? ' TargetMode="External"' : ""}/>`,
    )
    .join("");
  setPartText(parts, path, `${XML_START}<Relationships xmlns="${PACKAGE}">${items}</Relationships>`);
}

/** The path of the part that a relationship of `part` leads to. */
export function targetPath(part: string, target: string): string {
  const path = target.startsWith("/") ? [] : part.split("/").slice(0, -1);
  for (const step of target.replace(/^\//, "").split("/")) {
    if (step === "..") path.pop();
    else if (step !== "." && step !== "") path.push(step);
  }
  return path.join("/");
}

/** The parts that `part` leads to by relationships of a kind ("drawing", "comments", ...). */
export function relatedParts(parts: PackageParts, part: string, kind: string): { id: string; path: string }[] {
  return readRelationships(parts, part)
    .filter((one) => !one.external && one.type.endsWith(`/${kind}`))
    .map((one) => ({ id: one.id, path: targetPath(part, one.target) }));
}

/** Adds a relationship with a fresh id and returns the id. */
export function addRelationship(parts: PackageParts, part: string, type: string, target: string): string {
  const existing = readRelationships(parts, part);
  const taken = new Set(existing.map((one) => one.id));
  let number = existing.length + 1;
  while (taken.has(`rId${number}`)) number++;
  const id = `rId${number}`;
  writeRelationships(parts, part, [...existing, { id, type, target, external: false }]);
  return id;
}
