import { partText, setPartText, type PackageParts } from "./package-parts";
import { readRelationships, targetPath, writeRelationships } from "./relationships";
import { childrenOf, escapeXml, localName, parseXml } from "./xml";

export const CONTENT_TYPES = "[Content_Types].xml";

/** A path that no part has yet: "xl/charts/chart3.xml". */
export function freePath(parts: PackageParts, start: string, end: string): string {
  let number = 1;
  while (parts.has(`${start}${number}${end}`)) number++;
  return `${start}${number}${end}`;
}

/** The content type of a part, by its own entry or by its ending. */
export function contentTypeOf(parts: PackageParts, path: string): string | undefined {
  const root = parseXml(partText(parts, CONTENT_TYPES) ?? "<Types/>");
  const own = childrenOf(root, "Override").find((one) => one.attributes.PartName?.toLowerCase() === `/${path}`.toLowerCase());
  const ending = path.slice(path.lastIndexOf(".") + 1).toLowerCase();
  return (own ?? childrenOf(root, "Default").find((one) => one.attributes.Extension?.toLowerCase() === ending))?.attributes.ContentType;
}

/** Enters a part into the list of content types. */
export function declarePart(parts: PackageParts, path: string, contentType: string): void {
  const list = partText(parts, CONTENT_TYPES) ?? "";
  setPartText(
    parts,
    CONTENT_TYPES,
    list.replace(/<\/(?:\w+:)?Types>/, `<Override PartName="/${escapeXml(path)}" ContentType="${escapeXml(contentType)}"/>$&`),
  );
}

/** Copies a part and everything it leads to from one file into another, under free paths; gives back the new path. */
export function copyPart(to: PackageParts, from: PackageParts, path: string, copied = new Map<string, string>()): string {
  const done = copied.get(path);
  if (done) return done;
  const dot = path.lastIndexOf(".");
  const fresh = freePath(to, path.slice(0, dot).replace(/\d+$/, ""), path.slice(dot));
  copied.set(path, fresh);
  to.set(fresh, from.get(path) ?? new Uint8Array());
  const type = contentTypeOf(from, path);
  if (type) declarePart(to, fresh, type);
  writeRelationships(
    to,
    fresh,
    readRelationships(from, path).map((one) =>
      one.external ? one : { ...one, target: `/${copyPart(to, from, targetPath(path, one.target), copied)}` },
    ),
  );
  return fresh;
}

/**
 * Removes what nothing leads to, entries of parts that are not there, and links that lead nowhere. Old parts that
 * hucre passes on without a link, and its link to a theme that a file may not have, end here.
 */
export function prune(parts: PackageParts): void {
  const reached = new Set<string>([CONTENT_TYPES]);
  const visit = (part: string): void => {
    const links = readRelationships(parts, part);
    const alive = links.filter((one) => one.external || parts.has(targetPath(part, one.target)));
    if (alive.length < links.length) writeRelationships(parts, part, alive);
    for (const one of alive) {
      const path = targetPath(part, one.target);
      if (one.external || reached.has(path)) continue;
      reached.add(path);
      visit(path);
    }
  };
  visit("");
  for (const path of [...parts.keys()]) {
    const owner = /^(.*?)_rels\/([^/]*)\.rels$/.exec(path);
    const wanted = owner ? (owner[1] === "" && owner[2] === "") || reached.has(`${owner[1]}${owner[2]}`) : reached.has(path);
    if (!wanted) parts.delete(path);
  }
  const types = parseXml(partText(parts, CONTENT_TYPES) ?? "<Types/>");
  const entries = types.children
    .filter((one) => localName(one) === "Default" || parts.has((one.attributes.PartName ?? "").replace(/^\//, "")))
    .map(
      (one) =>
        `<${localName(one)}${Object.entries(one.attributes)
          .map(([name, value]) => ` ${name}="${escapeXml(value)}"`)
          .join("")}/>`,
    );
  setPartText(
    parts,
    CONTENT_TYPES,
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">${entries.join("")}</Types>`,
  );
}
