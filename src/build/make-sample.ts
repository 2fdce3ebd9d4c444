import { readFileSync } from "node:fs";
import path from "node:path";
import type { IWorkbookData } from "@univerjs/core";
import { collectComputed } from "../excel-stand-in/computed";
import type * as Headless from "../excel-stand-in/headless";
import { saveWorkbook, valuesOnlyCopy, type ComputedValues } from "../excel-stand-in/xlsx";
import type { BatchContents } from "../workbook/batch/contents";
import { insertBatch } from "../workbook/batch/insert-batch";
import { root } from "./run.mjs";

export interface MadeWorkbook {
  readonly bench: Headless.HeadlessBench;
  readonly snapshot: IWorkbookData;
  readonly computed: ComputedValues;
}

/** The bench with the very functions that ship; needs the built functions.js and functions.json. */
export function openBench({ createHeadlessBench }: typeof Headless): Headless.HeadlessBench {
  const built = (file: string) => readFileSync(path.join(root, "dist", file), "utf8");
  const bench = createHeadlessBench({
    metadata: JSON.parse(built("functions.json")) as Headless.HeadlessOptions["metadata"],
    functionsScript: built("functions.js"),
  });
  // src/workbook speaks to the host by these names, as it does in Excel.
  Object.assign(globalThis, { Excel: bench.Excel, Office: bench.Office });
  return bench;
}

/** A workbook with these batches, one sheet each, and whatever comes after them, calculated step by step, written by the same code that the pane runs. */
export async function makeWorkbook(
  headless: typeof Headless,
  batches: readonly BatchContents[],
  ...more: readonly ((context: Excel.RequestContext) => Promise<unknown>)[]
): Promise<MadeWorkbook> {
  const bench = openBench(headless);
  for (const contents of batches) await Excel.run((context) => insertBatch(context, contents));
  await Excel.run(async (context) => {
    const empty = context.workbook.worksheets.getItemOrNullObject("Sheet1");
    await context.sync();
    if (!empty.isNullObject) empty.delete();
    await context.sync();
  });
  await bench.calculate();
  for (const step of more) {
    await Excel.run(step);
    await bench.calculate();
  }
  const snapshot = bench.snapshot();
  return { bench, snapshot, computed: collectComputed(bench.engine, snapshot) };
}

/** As Excel would have saved it: formulas with their last results. A fixed day keeps the file the same from run to run. */
export function sampleBytes({ snapshot, computed }: MadeWorkbook): Promise<Uint8Array> {
  return saveWorkbook(snapshot, computed, undefined, { savedAt });
}

/** Every GYLE call replaced by its result: for readers that do not have our functions. */
export function valuesOnlyBytes({ snapshot, computed }: MadeWorkbook): Promise<Uint8Array> {
  return saveWorkbook(valuesOnlyCopy(snapshot, computed), computed, undefined, { savedAt });
}

const savedAt = new Date("2026-10-04T00:00:00Z");
