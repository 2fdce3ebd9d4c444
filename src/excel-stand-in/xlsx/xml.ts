/** One element of a small XML document. Enough for the parts of a workbook that we read or change ourselves. */
export interface XmlElement {
  /** The name with its prefix, as written: "c:chart". */
  name: string;
  attributes: Record<string, string>;
  children: XmlElement[];
  /** The text directly inside this element. */
  text: string;
}

/**
 * An opening tag. What it takes excludes "<" and its parts exclude each other, so that a try costs no more than the text it covers.
 */
const OPENING = /<([^\s<>/"'=]+)((?:\s+[^\s<>/"'=]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>/y;

/** What is passed over, or taken as text as it stands: how it begins and ends. */
const ENCLOSED: [start: string, end: string][] = [
  ["<!--", "-->"],
  ["<![CDATA[", "]]>"],
  ["<?", "?>"],
  ["<!", ">"],
];

/**
 * Goes through the text once, from left to right, and gives up at the first thing that is no XML.
 * @throws {Error} if the elements do not close in order, or there is anything but elements and their texts
 */
export function parseXml(source: string): XmlElement {
  const root: XmlElement = { name: "", attributes: {}, children: [], text: "" };
  const open = [root];
  let at = 0;
  const upTo = (end: string, from: number): number => {
    const found = source.indexOf(end, from);
    if (found < 0) throw new Error(`broken XML: ${end} is missing`);
    return found;
  };
  while (at < source.length) {
    const current = open.at(-1)!;
    if (source[at] !== "<") {
      const next = source.indexOf("<", at);
      const end = next < 0 ? source.length : next;
      current.text += unescapeXml(source.slice(at, end));
      at = end;
      continue;
    }
    const enclosed = ENCLOSED.find(([start]) => source.startsWith(start, at));
    if (enclosed) {
      const [start, end] = enclosed;
      const close = upTo(end, at + start.length);
      if (start === "<![CDATA[") current.text += source.slice(at + start.length, close);
      at = close + end.length;
    } else if (source[at + 1] === "/") {
      const end = upTo(">", at);
      const name = source.slice(at + 2, end).trimEnd();
      if (open.length < 2 || open.pop()!.name !== name) throw new Error(`broken XML at </${name.slice(0, 100)}>`);
      at = end + 1;
    } else {
      OPENING.lastIndex = at;
      const [whole, name, attributes, empty] = OPENING.exec(source) ?? [];
      if (whole === undefined) throw new Error(`broken XML at character ${at}`);
      const element = { name: name!, attributes: readAttributes(attributes ?? ""), children: [], text: "" };
      current.children.push(element);
      if (!empty) open.push(element);
      at += whole.length;
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
