import vm from "node:vm";
import type { Document } from "@xmldom/xmldom";
import { PNG } from "pngjs";
import { iconSizes } from "../draw-icons";
import { elements, resources } from "./document";
import type { Check } from "./own-checks";
import type { Site } from "./site";

/** Checks of the manifest against the built files. The folder of the pane's page stands for dist. */
function fileAt(manifest: Document, site: Site, address: string): Buffer | undefined {
  const page = startPage(manifest);
  const folder = page.slice(0, page.lastIndexOf("/") + 1);
  return folder !== "" && address.startsWith(folder) ? site.file(address.slice(folder.length)) : undefined;
}

const startPage = (manifest: Document): string =>
  elements(manifest, "DefaultSettings")
    .flatMap((settings) => [...settings.getElementsByTagNameNS("*", "SourceLocation")])[0]
    ?.getAttribute("DefaultValue") ?? "";

const filesExist: Check = (manifest, site) => {
  const addresses = [startPage(manifest), ...elements(manifest, "Url").map((entry) => entry.getAttribute("DefaultValue") ?? "")];
  return [...new Set(addresses)]
    .filter((address) => fileAt(manifest, site, address) === undefined)
    .map((address) => `there is no file for ${address}`);
};

const icons: Check = (manifest, site) => {
  const known = resources(manifest);
  const ribbon = elements(manifest, "Icon").flatMap((icon) => {
    const images = [...icon.getElementsByTagNameNS("*", "Image")].map((image) => ({
      size: Number(image.getAttribute("size")),
      address: known.get(image.getAttribute("resid") ?? "") ?? "",
    }));
    const missing = iconSizes.filter((size) => !images.some((image) => image.size === size));
    return [
      ...missing.map((size) => `an icon of ${size} px is missing on the ribbon`),
      ...images.flatMap(({ size, address }) => iconProblems(manifest, site, address, size)),
    ];
  });
  const store = [
    { name: "IconUrl", size: 32 },
    { name: "HighResolutionIconUrl", size: 64 },
  ].flatMap(({ name, size }) => iconProblems(manifest, site, elements(manifest, name)[0]?.getAttribute("DefaultValue") ?? "", size));
  return [...new Set([...ribbon, ...store])];
};

function iconProblems(manifest: Document, site: Site, address: string, size: number): string[] {
  const bytes = fileAt(manifest, site, address);
  if (bytes === undefined) return [`there is no icon file for ${address}`];
  try {
    const { width, height } = PNG.sync.read(bytes);
    return width === size && height === size ? [] : [`${address} is ${width} x ${height} px, not ${size} x ${size}`];
  } catch {
    return [`${address} is not a PNG picture`];
  }
}

/** A function that Excel knows by name but that nobody registers shows #N/A; the other way round it cannot be typed. */
const sameFunctions: Check = (_, site) => {
  const metadata = site.file("functions.json");
  const script = site.file("functions.js");
  if (metadata === undefined || script === undefined) return ["functions.json or functions.js is missing"];
  const described = (JSON.parse(metadata.toString()) as { functions: { id: string }[] }).functions.map(({ id }) => id);
  const registered = associatedIds(script.toString());
  return [
    ...described.filter((id) => !registered.includes(id)).map((id) => `${id} is in functions.json but functions.js does not register it`),
    ...registered.filter((id) => !described.includes(id)).map((id) => `${id} is registered by functions.js but is not in functions.json`),
    ...(described.length === 0 ? ["functions.json holds no function"] : []),
  ];
};

/** Runs functions.js as the classic script that it is, and notes what it registers, in either form that Excel offers. */
export function associatedIds(script: string): string[] {
  const ids: string[] = [];
  const associate = (first: string | Record<string, unknown>): void =>
    void ids.push(...(typeof first === "string" ? [first] : Object.keys(first)));
  vm.runInNewContext(script, { CustomFunctions: { associate, Error: class {} }, console });
  return ids;
}

export const siteChecks: readonly Check[] = [filesExist, icons, sameFunctions];
