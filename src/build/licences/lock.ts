import { readFileSync } from "node:fs";
import path from "node:path";
import { root } from "../run.mjs";

/** A package as package-lock.json has it. */
export interface LockedPackage {
  readonly place: string;
  readonly name: string;
  readonly version: string;
  readonly licence: string | undefined;
  /** Used to build and test only; nothing of it reaches a user. */
  readonly toolOnly: boolean;
  readonly hasInstallScript: boolean;
}

interface LockEntry {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly hasInstallScript?: boolean;
}

export function lockedPackages(): LockedPackage[] {
  const { packages } = JSON.parse(readFileSync(path.join(root, "package-lock.json"), "utf8")) as { packages: Record<string, LockEntry> };
  return Object.entries(packages)
    .filter(([place]) => place !== "")
    .map(([place, { version = "", license, dev = false, hasInstallScript = false }]) => {
      const name = place.slice(place.lastIndexOf("node_modules/") + "node_modules/".length);
      return { place, name, version, licence: license, toolOnly: dev, hasInstallScript };
    });
}
