import { DOMParser, XMLSerializer, type Document, type Element } from "@xmldom/xmldom";
import { strFromU8, strToU8 } from "fflate";

/** The parts of an .xlsx package by their names ("xl/workbook.xml"). */
export type Parts = Record<string, Uint8Array>;

export function readXml(parts: Parts, name: string): Document | undefined {
  const bytes = parts[name];
  return bytes && new DOMParser().parseFromString(strFromU8(bytes), "text/xml");
}

export function writeXml(parts: Parts, name: string, document: Document): void {
  parts[name] = strToU8(new XMLSerializer().serializeToString(document));
}

/** Elements of a local name, whatever their prefix. */
export const elements = (within: Document | Element, localName: string): Element[] =>
  Array.from(within.getElementsByTagNameNS("*", localName));

export const remove = (element: Element): void => {
  element.parentNode?.removeChild(element);
};

export interface Relationship {
  readonly id: string;
  /** The last word of its type: "worksheet", "styles". */
  readonly kind: string;
  /** The name of the part; undefined for an address outside the file. */
  readonly target: string | undefined;
  readonly element: Element;
}

/** "xl/worksheets/sheet1.xml" → "xl/worksheets/_rels/sheet1.xml.rels"; "" for the package itself. */
export const relationshipsOf = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");

export function relationships(parts: Parts, part: string): { document: Document | undefined; list: Relationship[] } {
  const document = readXml(parts, relationshipsOf(part));
  const list = document
    ? elements(document, "Relationship").map((element): Relationship => ({
        id: element.getAttribute("Id") ?? "",
        kind: /[^/]*$/.exec(element.getAttribute("Type") ?? "")?.[0] ?? "",
        target: element.getAttribute("TargetMode") === "External" ? undefined : partName(part, element.getAttribute("Target") ?? ""),
        element,
      }))
    : [];
  return { document, list };
}

/** A target as it is written, against the folder of the part that speaks of it. */
function partName(from: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1);
  const folders = from.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") folders.pop();
    else if (step !== ".") folders.push(step);
  }
  return folders.join("/");
}
