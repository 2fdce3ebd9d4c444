import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { root } from "./run.mjs";

/**
 * Excel keeps functions.json for a day, and takes a new one at once only when the manifest's version rose. So each version
 * stands for one functions.json: tests/functions/versions.json holds its hash, and only grows.
 */
export type RecordedVersions = Readonly<Record<string, string>>;

export const hashOf = (functionsJson: string): string => createHash("sha256").update(functionsJson).digest("hex");

/** The record with this version in it; or what is wrong, when the version stands for another functions.json already. */
export function recorded(
  versions: RecordedVersions,
  version: string,
  functionsJson: string,
): { versions: RecordedVersions } | { problem: string } {
  const hash = hashOf(functionsJson);
  const known = versions[version];
  if (known !== undefined && known !== hash)
    return {
      problem: `functions.json changed since version ${version}: \`npm run generate -- --raise\` gives the next version to package.json and manifest.xml, or Excel would keep the old list for a day`,
    };
  return { versions: { ...versions, [version]: hash } };
}

/** "0.1.0" → "0.1.1" */
export function nextVersion(version: string): string {
  const parts = version.split(".").map(Number);
  return [...parts.slice(0, -1), (parts.at(-1) ?? 0) + 1].join(".");
}

/** Where the version stands: what comes before it, and after. */
const places: readonly { file: string; pattern: RegExp; shown: (version: string) => string }[] = [
  { file: "package.json", pattern: /(^\{\s*"name": "gylebook",\s*"version": ")([\d.]+)(")/, shown: (version) => version },
  { file: "package-lock.json", pattern: /(^\{\s*"name": "gylebook",\s*"version": ")([\d.]+)(")/, shown: (version) => version },
  { file: "package-lock.json", pattern: /("": \{\s*"name": "gylebook",\s*"version": ")([\d.]+)(")/, shown: (version) => version },
  { file: "manifest.xml", pattern: /(<Version>)([\d.]+)(<\/Version>)/, shown: (version) => `${version}.0` },
];

/** Gives the project the next version, wherever it stands. */
export function raiseVersion(version: string, folder = root): string {
  const next = nextVersion(version);
  for (const { file, pattern, shown } of places) {
    const name = path.join(folder, file);
    const text = readFileSync(name, "utf8");
    if (!pattern.test(text)) throw new Error(`${file} does not hold the version where it should`);
    writeFileSync(name, text.replace(pattern, `$1${shown(next)}$3`));
  }
  return next;
}

export const packageVersion = (folder = root): string =>
  (JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8")) as { version: string }).version;
