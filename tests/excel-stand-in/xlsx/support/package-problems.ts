import { partText, unpack } from "../../../../src/excel-stand-in/xlsx/package-parts";
import { contentTypeOf } from "../../../../src/excel-stand-in/xlsx/part-copies";
import { readRelationships, targetPath } from "../../../../src/excel-stand-in/xlsx/relationships";
import { childrenOf, parseXml } from "../../../../src/excel-stand-in/xlsx/xml";

/** Everything about the parts of a file that Excel would complain about, in words; empty for a sound file. */
export function packageProblems(bytes: Uint8Array): string[] {
  const parts = unpack(bytes);
  const problems: string[] = [];
  const reached = new Set<string>(["[Content_Types].xml"]);
  const visit = (part: string): void => {
    const links = readRelationships(parts, part);
    if (new Set(links.map((link) => link.id)).size < links.length) problems.push(`${part}: two links with one id`);
    const source = part ? (partText(parts, part) ?? "") : "";
    for (const [, id] of source.matchAll(/\br:(?:id|embed)="([^"]*)"/g)) {
      if (!links.some((link) => link.id === id)) problems.push(`${part}: no link ${id}`);
    }
    for (const link of links.filter((one) => !one.external)) {
      const path = targetPath(part, link.target);
      if (!parts.has(path)) problems.push(`${part}: link to missing ${path}`);
      else if (!reached.has(path)) {
        reached.add(path);
        visit(path);
      }
    }
  };
  visit("");
  for (const path of parts.keys()) {
    if (!path.endsWith(".rels") && !reached.has(path)) problems.push(`${path}: nothing leads to it`);
    if (contentTypeOf(parts, path) === undefined && path !== "[Content_Types].xml") problems.push(`${path}: no content type`);
    if (/\.(xml|rels|vml)$/.test(path)) {
      try {
        parseXml(partText(parts, path)!);
      } catch (error) {
        problems.push(`${path}: ${String(error)}`);
      }
    }
  }
  const types = parseXml(partText(parts, "[Content_Types].xml") ?? "<Types/>");
  const overrides = childrenOf(types, "Override").map((one) => one.attributes.PartName ?? "");
  for (const name of overrides) if (!parts.has(name.slice(1))) problems.push(`content type of missing ${name}`);
  if (new Set(overrides).size < overrides.length) problems.push("a part has two content types");
  return problems;
}
