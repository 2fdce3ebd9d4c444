// `npm run bench`: measures what we set ourselves as targets, and prints it beside them; then what every function costs.
// `-- --season 300` measures the work in one workbook of so many batches instead. Needs a build.
import { parseArgs } from "node:util";
import { isStale } from "./stale.mjs";
import { registry } from "../functions/registry";
import { functionCosts } from "./bench/function-costs";
import { longSeason } from "./bench/long-season";
import { rows } from "./bench/rows";
import { root } from "./run.mjs";

if (isStale(root)) {
  console.error("The build is older than the sources: run `npm run build` first.");
  process.exit(1);
}

const { season } = parseArgs({ options: { season: { type: "string" } } }).values;
if (season !== undefined) {
  if (!/^[1-9]\d{1,2}$/u.test(season)) {
    console.error("--season takes the number of batches, 10 to 999.");
    process.exit(1);
  }
  await longSeason(Number(season));
  process.exit();
}

console.log("| what | target | measured | |\n|---|---|---|---|");
for (const row of rows) {
  const { measured, met, beyondEngine = false } = await row.measure();
  const verdict = met === undefined ? "not measured" : met ? "met" : beyondEngine ? "MISSED: the engine's own limit" : "MISSED";
  console.log(`| ${row.what} | ${row.target} | ${measured} | ${verdict} |`);
  if (met === false && !beyondEngine) process.exitCode = 1;
}

console.log("\nA season of 300 batches in one workbook, engine and all: npm run bench -- --season 300 (three minutes).");
console.log(
  "\nEach function with its first example. A dash: its answer is a block, or it takes no single numbers, so no column runs through it.\n",
);
console.log(functionCosts(registry));
// The grid engine keeps timers of its own running.
process.exit();
