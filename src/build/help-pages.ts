import { cpSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { AnyDescriptor } from "../functions/describe";
import { helpPagePath } from "../functions/metadata";
import { functionPage } from "./help/function-page";
import { indexPage } from "./help/index-page";
import { wordsPage } from "./help/words-page";
import { root } from "./run.mjs";

/** The reference as plain pages, one for each function and a list of all: `help/` in the folder given. */
export function writeHelpPages(registry: readonly AnyDescriptor[], folder: string): void {
  const help = path.join(folder, "help");
  // Pages of functions that went must go too.
  rmSync(help, { recursive: true, force: true });
  mkdirSync(help, { recursive: true });
  for (const descriptor of registry) writeFileSync(path.join(folder, helpPagePath(descriptor.id)), functionPage(descriptor));
  writeFileSync(path.join(help, "index.html"), indexPage(registry));
  writeFileSync(path.join(help, "words.html"), wordsPage());
  cpSync(path.join(root, "src/build/help/help.css"), path.join(help, "help.css"));
}
