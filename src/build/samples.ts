// `npm run samples`: makes the sample workbooks anew, by the code that the pane runs. Needs a build.
import { mkdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../excel-stand-in/headless";
import { firstExtractBatch } from "../workbook/batch/example-batch";
import { makeWorkbook, sampleBytes } from "./make-sample";
import { root } from "./run.mjs";
import { addSeasonSheets, noteSeason, seasonBatches } from "./sample-season";
import { sharedBatch, unplugForMembers } from "./sample-unplugged";

const headless = createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless;
mkdirSync(path.join(root, "sample-workbooks"), { recursive: true });
const samples = [
  { file: "first-extract-batch.xlsx", make: () => makeWorkbook(headless, [firstExtractBatch()]) },
  { file: "first-extract-batch-metric.xlsx", make: () => makeWorkbook(headless, [firstExtractBatch("metric")]) },
  { file: "season.xlsx", make: () => makeWorkbook(headless, seasonBatches(), (context) => addSeasonSheets(context), noteSeason) },
  { file: "shared-unplugged.xlsx", make: () => makeWorkbook(headless, [sharedBatch()], unplugForMembers) },
];
for (const { file, make } of samples) {
  const made = await make();
  writeFileSync(path.join(root, "sample-workbooks", file), await sampleBytes(made));
  made.bench.dispose();
  console.log(`sample-workbooks/${file}`);
}
process.exit(0);
