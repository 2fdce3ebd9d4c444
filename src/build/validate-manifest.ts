import type { Document } from "@xmldom/xmldom";
import { parseManifest } from "./manifest/document";
import { ownChecks } from "./manifest/own-checks";
import type { Site } from "./manifest/site";
import { siteChecks } from "./manifest/site-checks";

/**
 * What is wrong with a manifest, in words; empty when nothing is. Needs no network (Microsoft's validator is a web
 * service). Excel's rules: "Office Add-ins manifest", learn.microsoft.com/office/dev/add-ins.
 */
export function validateManifest(xml: string, site: Site): string[] {
  const manifest = wellFormed(xml);
  return typeof manifest === "string" ? [manifest] : [...ownChecks, ...siteChecks].flatMap((check) => check(manifest, site));
}

function wellFormed(xml: string): Document | string {
  try {
    return parseManifest(xml);
  } catch (problem) {
    return `the manifest is not well-formed XML: ${problem instanceof Error ? problem.message : String(problem)}`;
  }
}
