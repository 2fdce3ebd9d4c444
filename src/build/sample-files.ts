import { cpSync, existsSync } from "node:fs";
import path from "node:path";
import { root } from "./run.mjs";

/** The bench opens the sample workbooks from beside its own page. */
export function copySamples(): void {
  const samples = path.join(root, "sample-workbooks");
  if (existsSync(samples)) cpSync(samples, path.join(root, "dist/bench"), { recursive: true, filter: (source) => !source.endsWith(".md") });
}
