// `npm run samples`: makes the sample workbooks anew, by the code that the pane runs. Needs a build.
import { mkdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../bench/headless";
import { firstExtractBatch } from "../workbook/batch/example-batch";
import { makeWorkbook, sampleBytes } from "./make-sample";
import { root } from "./run.mjs";

const headless = createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless;
const made = await makeWorkbook(headless, [firstExtractBatch()]);
mkdirSync(path.join(root, "sample-workbooks"), { recursive: true });
writeFileSync(path.join(root, "sample-workbooks/first-extract-batch.xlsx"), await sampleBytes(made));
console.log("sample-workbooks/first-extract-batch.xlsx");
process.exit(0);
