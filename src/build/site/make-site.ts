import { cpSync, existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { writeAddinFiles } from "../addin-files";
import { hashNames } from "./hash-names";
import { headerRules, headersFile, otherServersNote } from "./headers";

/** What the bundler made: the pane's page with what it loads, and the bench, for members who have no Excel. */
const bundled = ["functions.js", "taskpane.html", "taskpane.js", "taskpane.css", "pane", "bench"];

/**
 * The folder to upload to a static site.
 *
 * @param base its address, passed by `baseAddress`
 * @param dist where a whole build lies
 * @param site where the folder is to stand; what was there goes
 */
export function makeSite(base: string, dist: string, site: string): void {
  rmSync(site, { recursive: true, force: true });
  mkdirSync(site, { recursive: true });
  for (const name of bundled)
    if (existsSync(path.join(dist, name))) cpSync(path.join(dist, name), path.join(site, name), { recursive: true });
  writeAddinFiles(site, base);
  // Whoever types the folder's address finds out how to get the add-in.
  cpSync(path.join(site, "install.html"), path.join(site, "index.html"));
  hashNames(site, ["taskpane.html", "bench/taskpane.html", "bench/index.html"]);
  const rules = headerRules(site);
  writeFileSync(path.join(site, "_headers"), headersFile(rules, new URL(base).pathname));
  writeFileSync(path.join(site, "HEADERS.txt"), otherServersNote(rules, base));
}
