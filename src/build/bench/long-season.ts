import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../../bench/headless";
import { collectComputed } from "../../bench/page/files/computed";
import { saveWorkbook } from "../../bench/xlsx";
import { checkWorkbook } from "../../workbook/check/check-workbook";
import { insertBatch } from "../../workbook/insert-batch";
import { insertSeason } from "../../workbook/season/insert-season";
import { refreshSeason } from "../../workbook/season/refresh-season";
import { openBench } from "../make-sample";
import { root } from "../run.mjs";
import { benchBatch } from "./bench-batch";

const stops = [30, 60, 100, 150, 200, 250, 300];

/**
 * Fills one workbook with a season, batch by batch, and prints at some sizes what the work there costs: seconds of processor
 * time, since the wall clock tells of the machine's other work, too. The column "the engine alone" is the yardstick: one
 * native `=1+1` typed into an empty cell of a sheet beside the batches, where nothing of ours takes part.
 */
export async function longSeason(batches: number): Promise<void> {
  const bench = openBench(createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless);
  const run = async (work: (context: Excel.RequestContext) => Promise<unknown>) => {
    await Excel.run(work);
    await bench.calculate();
  };
  const typeNative = (context: Excel.RequestContext): Promise<void> => {
    context.workbook.worksheets.getItem("Sheet1").getRange("A1").formulas = [["=1+1"]];
    return context.sync();
  };
  console.log("| batches | insert one more | season, batches new | season, nothing new | check | save | file | the engine alone | heap |\n|---|---|---|---|---|---|---|---|---|");
  let inserting = 0;
  let last = 0;
  for (let number = 1; number <= batches; number += 1) {
    inserting += await cost(() => run((context) => insertBatch(context, benchBatch(number))));
    if (!stops.includes(number) && number !== batches) continue;
    const insertion = inserting / (number - last);
    const fresh = await cost(() => run((context) => (last === 0 ? insertSeason(context, { sheetName: "Season", units: "metric", today: 46300 }) : refreshSeason(context))));
    const again = await cost(() => run(refreshSeason));
    const check = await cost(() => Excel.run((context) => checkWorkbook(context, {}, 46300)));
    let bytes = 0;
    const save = await cost(async () => {
      const snapshot = bench.snapshot();
      bytes = (await saveWorkbook(snapshot, collectComputed(bench.engine, snapshot))).length;
    });
    const alone = await cost(() => run(typeNative));
    console.log(`| ${number} | ${[insertion, fresh, again, check, save].map((seconds) => `${seconds.toFixed(2)} s`).join(" | ")} | ${(bytes / 1e6).toFixed(2)} MB | ${alone.toFixed(2)} s | ${(process.memoryUsage().heapUsed / 1e9).toFixed(1)} GB |`);
    [inserting, last] = [0, number];
  }
  bench.dispose();
}

/** Seconds of processor time. */
async function cost(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
