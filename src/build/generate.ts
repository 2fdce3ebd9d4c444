// `npm run generate`: rewrites the files that follow from the registry. `-- --check` only says which are stale.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { rowsReadme } from "../../tests/reference/rows-by-function";
import { functionsJson } from "../functions/metadata";
import { registry } from "../functions/registry";
import { functionTable } from "./function-table";
import { tryInExcelMarkdown } from "./guide/try-in-excel-page";
import { replaceBetweenMarkers } from "./markers";
import { root } from "./run.mjs";

/** Each file with the way to its content from what it holds now. */
const generated: Record<string, (now: string) => string> = {
  "tests/functions/functions.golden.json": () => `${JSON.stringify(functionsJson(registry), null, 2)}\n`,
  "tests/reference/README.md": () => rowsReadme(),
  "src/build/guide/try-in-excel.md": () => tryInExcelMarkdown(),
  "README.md": (now) => replaceBetweenMarkers(now, "functions", functionTable(registry)),
};

const checkOnly = process.argv.includes("--check");
const stale: string[] = [];
for (const [name, content] of Object.entries(generated)) {
  const file = path.join(root, name);
  const now = existsSync(file) ? readFileSync(file, "utf8") : "";
  const wanted = content(now);
  if (now === wanted) continue;
  stale.push(name);
  if (checkOnly) continue;
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, wanted);
}

if (stale.length === 0) console.log("Generated files are up to date.");
else if (checkOnly) {
  for (const name of stale) console.error(`${name} is stale: run \`npm run generate\``);
  process.exitCode = 1;
} else console.log(`Written: ${stale.join(", ")}`);
