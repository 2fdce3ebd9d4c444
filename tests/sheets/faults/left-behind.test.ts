import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { insertBatch } from "../../../src/workbook/batch/insert-batch";
import { unpluggedCopies } from "../../../src/workbook/exchange/unplug";
import { leftBehind, tidyUp } from "../../../src/workbook/grid/write/left-behind";
import { benchTimeout, openBatchBench } from "../../support/batch-bench";
import { sheetNames } from "../../support/unplug-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
  await Excel.run((context) => insertBatch(context, firstExtractBatch()));
}, benchTimeout);
afterAll(() => bench.dispose());

/** Excel dies in the middle of a round trip, and is opened again. */
async function dies(trip: number, work: (context: Excel.RequestContext) => Promise<unknown>): Promise<void> {
  const { faults } = bench.host;
  faults.failAtSync(trip, new Error("Excel is gone"), "refused within", 0.9);
  faults.failAtSync(trip + 1, new Error("Excel is gone"), "host gone");
  await expect(Excel.run(work)).rejects.toThrow("not known how much of it was done");
  faults.clear();
  await bench.calculate();
}

const later = () => Date.now() + 120_000;
const found = (now?: number) => Excel.run((context) => leftBehind(context, now));

it(
  "what a death leaves half written is found by its mark, and goes only where it is asked for",
  async () => {
    await dies(2, (context) => insertBatch(context, { ...firstExtractBatch(), sheetName: "Half" }));
    await dies(4, (context) => unpluggedCopies(context, ["Batch 1"], { prices: true, standalone: false }));
    expect(sheetNames(bench)).toEqual(["Sheet1", "Batch 1", "Half", "Batch 1 unplugged"]);
    expect(await found(later())).toEqual(["Half", "Batch 1 unplugged"]);
    // What was begun a moment ago may be another pane's, which is still at it.
    expect(await found()).toEqual([]);
    await Excel.run((context) => tidyUp(context, ["Batch 1", "Half"], "delete"));
    expect(sheetNames(bench)).toEqual(["Sheet1", "Batch 1", "Batch 1 unplugged"]);
    await Excel.run((context) => tidyUp(context, ["Batch 1 unplugged"], "keep"));
    expect(await found(later())).toEqual([]);
    expect(sheetNames(bench)).toEqual(["Sheet1", "Batch 1", "Batch 1 unplugged"]);
  },
  benchTimeout,
);

it(
  "a sheet that was finished carries no mark",
  async () => {
    await Excel.run((context) => insertBatch(context, { ...firstExtractBatch(), sheetName: "Whole" }));
    await Excel.run((context) => unpluggedCopies(context, ["Whole"], { prices: true, standalone: false }));
    expect(await found(later())).toEqual([]);
  },
  benchTimeout,
);
