// @ts-check
// Is dist older than what it is made from?
import { readdirSync, statSync } from "node:fs";
import path from "node:path";

/** What a build reads: folders whole, files as they are. */
const sources = ["src", "sample-workbooks", "package.json", "package-lock.json", "tsconfig.json", "webpack.config.js", "manifest.xml"];

/** Written last by a full build (`src/build/build.ts`). */
export const builtMark = "dist/.built";

/** @param {string} folder the project's folder */
export function isStale(folder) {
  const built = statSync(path.join(folder, builtMark), { throwIfNoEntry: false })?.mtimeMs;
  return built === undefined || sources.some((source) => newest(path.join(folder, source)) > built);
}

/**
 * The newest change at or below a path. A folder's own time counts: it moves when a file in it is deleted.
 * @param {string} place
 * @returns {number}
 */
function newest(place) {
  const stats = statSync(place, { throwIfNoEntry: false });
  if (stats === undefined) return 0;
  if (!stats.isDirectory()) return stats.mtimeMs;
  return Math.max(stats.mtimeMs, ...readdirSync(place).map((name) => newest(path.join(place, name))));
}
