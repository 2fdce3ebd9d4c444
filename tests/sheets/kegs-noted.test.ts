import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { withBlocks } from "../../src/workbook/batch/new-batch";
import { insertSeason } from "../../src/workbook/sheets/season/insert-season";
import { refreshSeason } from "../../src/workbook/sheets/season/refresh-season";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

it(
  "what was noted for kegs is what the season counts, half of a batch in bottles or not, in either unit",
  async () => {
    const kegs = (id: string, units: "us" | "metric", filled: number) => {
      const batch = withBlocks({ ...firstExtractBatch(units), id, sheetName: id }, ["kegLine"]);
      return { ...batch, kegLine: { ...batch.kegLine!, filled } };
    };
    await insertOn(bench, kegs("Litres", "metric", 9.5));
    await insertOn(bench, kegs("Gallons", "us", 2));
    await insertOn(bench, { ...firstExtractBatch("metric"), id: "none", sheetName: "Bottles alone" });
    await Excel.run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46320 }));
    await bench.calculate();
    await Excel.run((context) => refreshSeason(context));
    await bench.calculate();
    const row = Array.from({ length: 20 }, (_, index) => index + 1).find((at) => bench.valueAt("Season", `A${at}`) === "Ready in kegs");
    // 2 US gal are 7.571 L (NIST Handbook 44).
    expect(bench.valueAt("Season", `C${row}`)).toBeCloseTo(9.5 + 2 * 3.785411784, 6);
  },
  benchTimeout,
);
