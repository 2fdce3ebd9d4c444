import { readFileSync } from "node:fs";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { root } from "../run.mjs";
import type { BenchRow } from "./row";

const dist = path.join(root, "dist");

/** What Excel has to fetch, as a web server would send it: minified and gzipped, in thousands of bytes. */
export const bundleSizes: readonly BenchRow[] = [
  sizeRow("functions bundle, minified and gzipped", 45, () => ["functions.js"]),
  sizeRow("pane bundle with its styles, minified and gzipped", 120, paneFiles),
];

/** The files of ours that the pane's page asks for, besides the functions. */
function paneFiles(): string[] {
  const page = readFileSync(path.join(dist, "taskpane.html"), "utf8");
  return [...page.matchAll(/(?:src|href)="([\w.-]+\.(?:js|css))"/g)]
    .map(([, file]) => file ?? "")
    .filter((file) => file !== "functions.js");
}

function sizeRow(what: string, limit: number, files: () => readonly string[]): BenchRow {
  return {
    what,
    target: `${limit} kB or less`,
    measure: () => {
      const size = files().reduce((sum, file) => sum + gzipSync(readFileSync(path.join(dist, file))).length, 0) / 1000;
      return { measured: `${size.toFixed(1)} kB`, met: size > 0 && size <= limit };
    },
  };
}
