import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { functionsJson } from "../functions/metadata";
import { registry } from "../functions/registry";
import { drawIcon, iconSizes } from "./draw-icons";
import { writeHelpPages } from "./help-pages";
import { root } from "./run.mjs";

/** Where the committed manifest points: the developer's own computer. */
export const developmentBase = "https://localhost:3000/";

/** What Excel loads besides the bundles: functions.json, the help pages, the icons, and the manifest for the given address. */
export function writeAddinFiles(base: string = developmentBase): void {
  const dist = path.join(root, "dist");
  mkdirSync(path.join(dist, "assets"), { recursive: true });
  writeFileSync(path.join(dist, "functions.json"), JSON.stringify(functionsJson(registry, folderAddress(base))));
  writeHelpPages(registry, dist);
  for (const size of iconSizes) writeFileSync(path.join(dist, "assets", `icon-${size}.png`), drawIcon(size));
  writeFileSync(path.join(dist, "manifest.xml"), manifestFor(base, readFileSync(path.join(root, "manifest.xml"), "utf8")));
}

/** The manifest with every address moved from the development server to `base`. Excel takes https only. */
export function manifestFor(base: string, manifest: string): string {
  const address = new URL(base);
  if (address.protocol !== "https:") throw new Error(`Excel loads add-ins from https only, not from ${base}`);
  return manifest.replaceAll(developmentBase, folderAddress(base)).replaceAll(new URL(developmentBase).origin, address.origin);
}

const folderAddress = (base: string): string => new URL(base.endsWith("/") ? base : `${base}/`).href;
