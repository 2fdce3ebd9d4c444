import { DOMParser, onErrorStopParsing, type Document, type Element } from "@xmldom/xmldom";

/** The manifest as a tree; throws on anything that is not well-formed XML. */
export function parseManifest(xml: string): Document {
  return new DOMParser({ onError: onErrorStopParsing }).parseFromString(xml, "text/xml");
}

/** All elements of a local name, wherever they stand. */
export function elements(document: Document, name: string): Element[] {
  return [...document.getElementsByTagNameNS("*", name)];
}

export function children(element: Element | null): Element[] {
  return [...(element?.childNodes ?? [])].filter((node) => node.nodeType === 1) as Element[];
}

export const text = (document: Document, name: string): string => elements(document, name)[0]?.textContent?.trim() ?? "";

/** resid → value of everything under Resources. */
export function resources(document: Document): Map<string, string> {
  return new Map(
    elements(document, "Resources")
      .flatMap(children)
      .flatMap(children)
      .map((entry) => [entry.getAttribute("id") ?? "", entry.getAttribute("DefaultValue") ?? ""]),
  );
}
