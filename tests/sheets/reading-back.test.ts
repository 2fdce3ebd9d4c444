import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet, readBatchSheets } from "../../src/workbook/batch/read/batch-sheets";
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
});
