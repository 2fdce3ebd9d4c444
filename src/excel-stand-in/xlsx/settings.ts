import { partText, setPartText, type PackageParts } from "./package-parts";
import { declarePart, freePath } from "./part-copies";
import { addRelationship, officeRelation, relatedParts, XML_START } from "./relationships";
import { deepText, escapeXml, parseXml } from "./xml";

const NAMESPACE = "urn:gylebook:settings";
const WORKBOOK = "xl/workbook.xml";

/**
 * What the pane keeps in the workbook, for the bench. Excel keeps such settings in parts of its own that tie a file to
 * one installation of an add-in; ours are a part of custom XML, which every program passes on and none minds.
 */
export function writeSettings(parts: PackageParts, settings: Record<string, unknown> | undefined): void {
  if (!settings || Object.keys(settings).length === 0) return;
  const path = freePath(parts, "customXml/item", ".xml");
  setPartText(parts, path, `${XML_START}<settings xmlns="${NAMESPACE}">${escapeXml(JSON.stringify(settings))}</settings>`);
  declarePart(parts, path, "application/xml");
  addRelationship(parts, WORKBOOK, officeRelation("customXml"), `/${path}`);
}

export function readSettings(parts: PackageParts, workbookPart: string): Record<string, unknown> | undefined {
  for (const { path } of relatedParts(parts, workbookPart, "customXml")) {
    const source = partText(parts, path) ?? "";
    if (!source.includes(`xmlns="${NAMESPACE}"`)) continue;
    const settings: unknown = JSON.parse(deepText(parseXml(source)));
    if (typeof settings === "object" && settings !== null) return settings as Record<string, unknown>;
  }
  return undefined;
}
