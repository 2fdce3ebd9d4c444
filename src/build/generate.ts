// `npm run generate`: rewrites the files that follow from the registry. `-- --check` only says which are stale; `-- --raise` first
// gives the project the next version, which a changed functions.json needs.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { rowsReadme } from "../../tests/reference/rows-by-function";
import { coverageReadme } from "../../tests/support/forecast-coverage";
import { functionsJson } from "../functions/metadata";
import { registry } from "../functions/registry";
import { functionTable } from "./function-table";
import { tryInExcelMarkdown } from "./guide/try-in-excel-page";
import { packageVersion, raiseVersion, recorded, type RecordedVersions } from "./functions-version";
import { replaceBetweenMarkers } from "./markers";
import { root } from "./run.mjs";

if (process.argv.includes("--raise")) console.log(`Version ${raiseVersion(packageVersion())}`);
const golden = `${JSON.stringify(functionsJson(registry), null, 2)}\n`;

/** Each file with the way to its content from what it holds now. */
const generated: Record<string, (now: string) => string> = {
  "tests/functions/functions.golden.json": () => golden,
  "tests/functions/versions.json": (now) => versions(now),
  "tests/reference/README.md": () => rowsReadme(),
  "tests/reference/log/coverage.md": () => coverageReadme(),
  "src/build/guide/try-in-excel.md": () => tryInExcelMarkdown(),
  "README.md": (now) => replaceBetweenMarkers(now, "functions", functionTable(registry)),
};

function versions(now: string): string {
  const answer = recorded(now === "" ? {} : (JSON.parse(now) as RecordedVersions), packageVersion(), golden);
  if ("versions" in answer) return `${JSON.stringify(answer.versions, null, 2)}\n`;
  console.error(answer.problem);
  process.exitCode = 1;
  return now;
}

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
