import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { BatchContents } from "../../src/workbook/batch/contents";
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
  "the season counts the parts of a wort, and not section 8 as well",
  async () => {
    const plain = firstExtractBatch("metric");
    const parts = (id: string, into: BatchContents["packaging"]["into"], bottles: number, keg: number) => {
      const batch = withBlocks({ ...plain, id, sheetName: id, packaging: { ...plain.packaging, into } }, ["kegLine", "partsOfWort"]);
      const { one, two } = batch.partsOfWort!;
      return {
        ...batch,
        // What somebody noted before the beer was packaged in parts.
        packaging: { ...batch.packaging, bottlesFilled: 37 },
        kegLine: { ...batch.kegLine!, filled: 18 },
        partsOfWort: {
          ...batch.partsOfWort!,
          one: { ...one, volume: 9, into: "bottles", bottleVolume: 750, bottlesFilled: bottles },
          two: { ...two, volume: 8, into: "keg", kegFilled: keg },
        },
      };
    };
    await insertOn(bench, parts("Half and half", "bottles", 12, 7.5));
    await insertOn(bench, parts("As a keg", "keg", 11, 8));
    await insertOn(bench, { ...plain, id: "none", sheetName: "Bottles alone", packaging: { ...plain.packaging, bottlesFilled: 40 } });
    await Excel.run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46320 }));
    await bench.calculate();
    await Excel.run((context) => refreshSeason(context));
    await bench.calculate();
    const rows = Array.from({ length: 80 }, (_, index) => index + 1);
    const of = (sheetName: string, column: string) =>
      bench.valueAt("Season", `${column}${rows.find((at) => bench.valueAt("Season", `X${at}`) === sheetName)}`);
    for (const [sheetName, bottles, keg] of [
      ["Half and half", 12, 7.5],
      ["As a keg", 11, 8],
    ] as const) {
      expect(of(sheetName, "Q")).toBe(bottles);
      expect(of(sheetName, "R")).toBe(keg);
      expect(of(sheetName, "AD")).toBeCloseTo(bottles * 0.75 + keg, 9);
    }
    expect(of("Bottles alone", "Q")).toBe(40);
  },
  benchTimeout,
);
