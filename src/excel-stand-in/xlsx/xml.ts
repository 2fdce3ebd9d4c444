/** One element of a small XML document. Enough for the parts of a workbook that we read or change ourselves. */
export interface XmlElement {
  /** The name with its prefix, as written: "c:chart". */
  name: string;
  attributes: Record<string, string>;
  children: XmlElement[];
  /** The text directly inside this element. */
  text: string;
}

const TOKEN =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!\[CDATA\[([\s\S]*?)\]\]>|<![^>]*>|<(\/?)([^\s/>]+)((?:\s+[^\s=>]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>|([^<]+)/g;

/** @throws {Error} if the elements do not close in order */
export function parseXml(source: string): XmlElement {
  const root: XmlElement = { name: "", attributes: {}, children: [], text: "" };
  const open = [root];
  for (const [, cdata, closing, name, attributes, empty, text] of source.matchAll(TOKEN)) {
    const current = open.at(-1)!;
    if (cdata !== undefined) current.text += cdata;
    else if (text !== undefined) current.text += unescapeXml(text);
    else if (name === undefined) continue;
    else if (closing) {
      if (open.length < 2 || open.pop()!.name !== name) throw new Error(`broken XML at </${name}>`);
    } else {
      const element = { name, attributes: readAttributes(attributes ?? ""), children: [], text: "" };
      current.children.push(element);
      if (!empty) open.push(element);
    }
  }
  if (open.length !== 1 || !root.children[0]) throw new Error("broken XML: it ends too early");
  return root.children[0];
}

function readAttributes(source: string): Record<string, string> {
  const result: Record<string, string> = {};
  for (const [, name, double, single] of source.matchAll(/([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)) {
    result[name!] = unescapeXml(double ?? single ?? "");
  }
  return result;
}

export function serializeXml(element: XmlElement): string {
  const attributes = Object.entries(element.attributes)
    .map(([name, value]) => ` ${name}="${escapeXml(value)}"`)
    .join("");
  const inside =
    escapeXml(element.text.trim() === "" && element.children.length > 0 ? "" : element.text) + element.children.map(serializeXml).join("");
  return inside === "" ? `<${element.name}${attributes}/>` : `<${element.name}${attributes}>${inside}</${element.name}>`;
}

/** The name without its prefix: files of different origin use different prefixes for the same element. */
export const localName = (element: XmlElement): string => element.name.slice(element.name.indexOf(":") + 1);

export const childrenOf = (element: XmlElement | undefined, name: string): XmlElement[] =>
  element?.children.filter((child) => localName(child) === name) ?? [];

/** Walks down by local names; undefined as soon as one is missing. */
export function descend(element: XmlElement | undefined, ...path: string[]): XmlElement | undefined {
  return path.reduce<XmlElement | undefined>((at, name) => childrenOf(at, name)[0], element);
}

/** The first element of a name anywhere below. */
export function findDeep(element: XmlElement | undefined, name: string): XmlElement | undefined {
  if (!element) return undefined;
  for (const child of element.children) {
    const found = localName(child) === name ? child : findDeep(child, name);
    if (found) return found;
  }
  return undefined;
}

/** All text below an element, as the runs of a title hold it. */
export function deepText(element: XmlElement | undefined): string {
  return element ? element.text + element.children.map(deepText).join("") : "";
}

export function escapeXml(text: string): string {
  return text
    .replace(/[&<>"]/g, (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[sign]!)

    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/g, "");
}

export function unescapeXml(text: string): string {
  return text.replace(/&(#x[0-9a-f]+|#\d+|amp|lt|gt|quot|apos);/gi, (whole, code: string) => {
    if (!code.startsWith("#")) return { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" }[code.toLowerCase()] ?? whole;
    const point = code[1]?.toLowerCase() === "x" ? parseInt(code.slice(2), 16) : Number(code.slice(1));
    return point <= 0x10ffff ? String.fromCodePoint(point) : whole;
  });
}
