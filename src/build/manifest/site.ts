import { existsSync, readFileSync } from "node:fs";
import path from "node:path";

/** What the manifest is checked against: the package's version and the files that the addresses in it stand for. */
export interface Site {
  readonly version: string;
  /** The bytes behind an address under the manifest's base, or undefined. */
  readonly file: (place: string) => Buffer | undefined;
}

export function builtSite(root: string, folder = "dist"): Site {
  const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { version: string };
  return {
    version,
    file: (place) => {
      const file = path.join(root, folder, place);
      return existsSync(file) ? readFileSync(file) : undefined;
    },
  };
}
