import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet, readBatchSheets } from "../../src/workbook/batch/read/batch-sheets";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { openWorkbook } from "../../src/excel-stand-in/xlsx";
import { registry } from "../../src/functions/registry";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";

const choices = {
  id: "a1",
  sheetName: "Mashed",
  batchName: "Reed Bed Bitter",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
} as const;
const taught: BatchContents = {
  ...firstExtractBatch(),
  sheetName: "Taught",
  steps: [
    { what: "Sit down", part: "before", minutes: 5, caution: "Hot chair", why: "Haste spoils beer" },
    { what: '="Boil "&TEXT(boil_minutes,"0")', part: "boil", minutes: 60, caution: "", why: "" },
  ],
  happened: [0.4, "", 0.5],
  malt: [{ ingredient: "Pale malt", mass: 4, yieldPercent: 80, handling: "mash", colour: 3, cost: "", remark: "crushed finely" }],
};
const batches: readonly BatchContents[] = [
  firstExtractBatch(),
  exampleBatch(choices),
  newBatch({ ...choices, sheetName: "Blank", method: "extract" }),
  taught,
  // From right to left, with a mark of direction inside, on a day that three years of four do not have.
  exampleBatch({ ...choices, id: "rtl", sheetName: "جعة الحصاد", batchName: "جعة \u200fالحصاد 12 %", brewedOn: dayNumber("2028-02-29") }),
  // A sheet takes 31 letters and no more; a batch's own name forty and beyond.
  exampleBatch({
    ...choices,
    id: "long",
    sheetName: "Quillmarsh midsummer harvest al",
    batchName: "Quillmarsh midsummer harvest ale, thirds",
  }),
];

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
  for (const batch of batches) await insertOn(bench, batch);
}, benchTimeout);
afterAll(() => bench.dispose());

describe("reading a batch sheet back", () => {
  it("gives what was written, for every sheet at once", async () => {
    const sheets = await Excel.run(readBatchSheets);
    expect(sheets.map(batchContents)).toEqual(batches);
  });

  it("follows names where rows were put in above", async () => {
    const found = await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Mashed").getRange("4:5").insert("Down");
      await context.sync();
      return readBatchSheet(context, "Mashed");
    });
    expect(found && batchContents(found)).toEqual(batches[1]);
  });

  it("does not take another sheet for a batch", async () => {
    expect(await Excel.run((context) => readBatchSheet(context, "Sheet1"))).toBeUndefined();
    expect(await Excel.run((context) => readBatchSheet(context, "no such sheet"))).toBeUndefined();
  });

  it(
    "gives the same from a saved file, whatever the names",
    async () => {
      expect(batches.at(-1)?.batchName).toHaveLength(40);
      expect(batches.at(-1)?.sheetName).toHaveLength(31);
      const { snapshot } = await openWorkbook(await bench.host.files.save(), { functionNames: registry.map(({ id }) => id) });
      await bench.load(snapshot);
      const sheets = await Excel.run(readBatchSheets);
      expect(sheets.map(batchContents).map(({ sheetName, batchName, brewedOn }) => [sheetName, batchName, brewedOn])).toEqual(
        batches.map(({ sheetName, batchName, brewedOn }) => [sheetName, batchName, brewedOn]),
      );
    },
    benchTimeout,
  );
});
