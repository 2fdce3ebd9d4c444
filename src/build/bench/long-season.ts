import type * as Headless from "../../excel-stand-in/headless";
import { collectComputed } from "../../excel-stand-in/computed";
import { openWorkbook, saveWorkbook } from "../../excel-stand-in/xlsx";
import { checkWorkbook } from "../../workbook/care/check/check-workbook";
import { insertBatch } from "../../workbook/batch/insert-batch";
import { insertSeason } from "../../workbook/sheets/season/insert-season";
import { refreshSeason } from "../../workbook/sheets/season/refresh-season";
import { benchBatch } from "./bench-batch";
import { processorMicroseconds } from "./microseconds";
import { multipliedSeason } from "./multiplied-season";
import { oneBatch } from "./one-batch";
import { withBench } from "./with-bench";

type Costs = ReadonlyMap<string, number>;
const few = 30;

/**
 * Prints what work in a workbook of many batches costs, beside one of 30: seconds of processor time.
 * "One native cell" is the yardstick: `=1+1` typed into an empty cell of a sheet beside the batches, where nothing of
 * ours takes part. What grows as it does is the grid engine's, which goes through every formula of a workbook at each
 * calculation.
 */
export async function longSeason(batches: number): Promise<void> {
  const one = await oneBatch();
  const costsOf = (count: number) => withBench((bench) => measured(bench, multipliedSeason(one, count), count));
  const [small, large] = [await costsOf(few), await costsOf(batches)];
  const times = batches / few;
  console.log(`| processor seconds with | ${few} batches | ${batches} batches | for each batch; wanted: at most 1.3x |\n|---|---|---|---|`);
  for (const [what, seconds] of large) {
    const before = small.get(what) ?? 0;
    console.log(`| ${what} | ${before.toFixed(2)} | ${seconds.toFixed(2)} | ${(seconds / before / times).toFixed(2)}x |`);
  }
}

async function measured(
  bench: Headless.HeadlessBench,
  snapshot: Parameters<Headless.HeadlessBench["load"]>[0],
  count: number,
): Promise<Costs> {
  const costs = new Map<string, number>();
  const cost = async (what: string, work: () => Promise<unknown>) => {
    const before = processorMicroseconds();
    await work();
    costs.set(what, (processorMicroseconds() - before) / 1e6);
  };
  const run = async (work: (context: Excel.RequestContext) => Promise<unknown>) => {
    await Excel.run(work);
    await bench.calculate();
  };
  const types = (sheetName: string, cell: string, content: string | number) =>
    run((context) => {
      context.workbook.worksheets.getItem(sheetName).getRange(cell).formulas = [[content]];
      return context.sync();
    });
  await cost("open and calculate everything", async () => {
    await bench.load(snapshot);
    await bench.calculate();
  });
  const shown = bench.valueAt(`Batch ${count}`, "G5");
  if (typeof shown !== "number" || shown !== bench.valueAt("Batch 1", "G5"))
    throw new Error(`The last batch shows ${String(shown)}: the season was not multiplied rightly.`);
  await cost("one native cell: the engine alone", () => types("Sheet1", "A1", "=1+1"));
  await cost("one input of one batch", () => types("Batch 2", "B9", 21));
  await cost("check this workbook", () => Excel.run((context) => checkWorkbook(context, {}, 46300)));
  let file = new Uint8Array();
  await cost("save as a file", async () => {
    const taken = bench.snapshot();
    file = new Uint8Array(await saveWorkbook(taken, collectComputed(bench.engine, taken)));
  });
  await cost("read the file", () => openWorkbook(file));
  await cost("make the season sheet", () =>
    run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46300 })),
  );
  await cost("refresh it, nothing new", () => run(refreshSeason));
  await cost("insert one more batch", () => run((context) => insertBatch(context, benchBatch(count + 1))));
  await cost("refresh the season, one new", () => run(refreshSeason));
  return costs;
}
