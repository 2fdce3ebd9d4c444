import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../../excel-stand-in/headless";
import { collectComputed } from "../../excel-stand-in/computed";
import { saveWorkbook } from "../../excel-stand-in/xlsx";
import { insertBatch } from "../../workbook/batch/insert-batch";
import { insertSeason } from "../../workbook/sheets/season/insert-season";
import { refreshSeason } from "../../workbook/sheets/season/refresh-season";
import { planSeason } from "../../workbook/sheets/season/season-plan";
import { mergeRows, newRow } from "../../workbook/sheets/season/season-rows";
import { openBench } from "../make-sample";
import { root } from "../run.mjs";
import { benchBatch } from "./bench-batch";
import { microsecondsPer, processorMicroseconds } from "./microseconds";
import type { BenchRow } from "./row";

/** Milliseconds a batch for a whole season in one workbook: sheets, season sheet, one more refresh, saved as a file. */
async function wholeSeason(batches: number): Promise<number> {
  const bench = openBench(createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless);
  const started = processorMicroseconds();
  for (let number = 1; number <= batches; number += 1) await Excel.run((context) => insertBatch(context, benchBatch(number)));
  await Excel.run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46300 }));
  await Excel.run(refreshSeason);
  await bench.calculate();
  const snapshot = bench.snapshot();
  await saveWorkbook(snapshot, collectComputed(bench.engine, snapshot));
  const perBatch = (processorMicroseconds() - started) / 1000 / batches;
  bench.dispose();
  return perBatch;
}

/** Microseconds a batch for our own part of a season: the list is merged and all of the sheet planned. */
function ownPart(batches: number): number {
  const rows = Array.from({ length: batches }, (_, index) => ({
    ...newRow,
    sheetName: `Batch ${index}`,
    id: `b${index}`,
    lastName: `Batch ${index}`,
    settled: true,
    letGo: false,
    shown: [],
  }));
  const sheets = rows.map(({ sheetName, id }) => ({ sheetName, id }));
  const once = () => planSeason({ sheetName: "Season", units: "metric", today: 46300, rows: mergeRows(rows, sheets.toReversed()).rows });
  return microsecondsPer(once) / batches;
}

const [few, many] = [4, 16];

/**
 * Inserting a sheet costs the free grid engine about a second, and more in a workbook that holds many: it is asked for few
 * here, our own part for all. What a workbook of 300 costs is measured by `npm run bench -- --season 300`.
 */
export const seasonScale: readonly BenchRow[] = [
  {
    what: "season of 300 batches, our own part: time per batch against 30",
    target: "at most 1.3x",
    measure: () => {
      const [small, large] = [ownPart(30), ownPart(300)];
      return { measured: `${(large / small).toFixed(2)}x (${large.toFixed(0)} µs)`, met: large <= 1.3 * small };
    },
  },
  {
    what: `season of ${many} batches on the engine, written, calculated, refreshed, saved: time per batch against ${few}`,
    target: "at most 1.3x",
    measure: async () => {
      await wholeSeason(1);
      const small = await wholeSeason(few);
      const large = await wholeSeason(many);
      return { measured: `${(large / small).toFixed(2)}x (${(large / 1000).toFixed(2)} s)`, met: large <= 1.3 * small };
    },
  },
];
