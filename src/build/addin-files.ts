import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { functionsJson } from "../functions/metadata";
import { registry } from "../functions/registry";
import { drawIcon, iconSizes } from "./draw-icons";
import { writeGuide } from "./guide/write-guide";
import { writeHelpPages } from "./help-pages";
import { notices } from "./licences/notices";
import { root } from "./run.mjs";
import { installPage } from "./site/install-page";

/** Where the committed manifest points: the developer's own computer. */
export const developmentBase = "https://localhost:3000/";

/** What Excel and its users load besides the bundles: functions.json, icons, pages to read, and the manifest for the given address. */
export function writeAddinFiles(folder: string, base: string): void {
  mkdirSync(path.join(folder, "assets"), { recursive: true });
  writeFileSync(path.join(folder, "functions.json"), JSON.stringify(functionsJson(registry, base)));
  writeHelpPages(registry, folder);
  writeGuide(folder, base);
  writeFileSync(path.join(folder, "install.html"), installPage(base));
  writeFileSync(path.join(folder, "licences.txt"), notices());
  for (const size of iconSizes) writeFileSync(path.join(folder, "assets", `icon-${size}.png`), drawIcon(size));
  writeFileSync(path.join(folder, "manifest.xml"), manifestFor(base, readFileSync(path.join(root, "manifest.xml"), "utf8")));
}

/** The manifest with every address moved from the development server to `base`, an address that `baseAddress` has passed. */
export function manifestFor(base: string, manifest: string): string {
  return manifest.replaceAll(developmentBase, base).replaceAll(new URL(developmentBase).origin, new URL(base).origin);
}
