import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { addTypical, fillTypical, offeredOn, unfilledLines } from "../../src/workbook/brewing/companion/ingredients/typical-lines";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";
import { notesOn } from "../support/unplug-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const blank = (units: "metric" | "us", method: "extract" | "all-grain", sheetName: string) =>
  newBatch({ id: "a", sheetName, batchName: "New", brewedOn: 46270, volume: 20, units, topUp: 0, method });
const look = async (sheetName: string) => (await Excel.run((context) => readBatchSheet(context, sheetName)))!;
const malt = async (sheetName: string) => batchContents(await look(sheetName)).malt;

describe("typical malts on a sheet", () => {
  it(
    "come into the first free line, with a note of where their figures are from, and no further than the table",
    async () => {
      await insertOn(bench, blank("metric", "all-grain", "Malts"));
      const munich = offeredOn(await look("Malts")).find(({ name }) => name === "Munich malt")!;
      for (const mass of [3, ""] as const) {
        const sheet = await look("Malts");
        await Excel.run((context) => addTypical(context, sheet, { typical: munich, mass }));
      }
      // 8 °L are 20.7 EBC by the maltsters' line (2.65 °L − 1.2, from memory: 20).
      expect(await malt("Malts")).toMatchObject([
        { ingredient: "Munich malt", mass: 3, yieldPercent: 77.5, handling: "mash" },
        { ingredient: "Munich malt", mass: 0, yieldPercent: 77.5, handling: "mash" },
      ]);
      expect(Math.abs((await malt("Malts"))[0]!.colour - 20)).toBeLessThan(1.5);
      expect((await notesOn("Malts")).filter((note) => /Typical: yield 75 to 80 %.*come first/.test(note))).toHaveLength(2);
      for (let line = 2; line < 6; line += 1) {
        const sheet = await look("Malts");
        await Excel.run((context) => addTypical(context, sheet, { typical: munich, mass: 1 }));
      }
      const full = await look("Malts");
      await expect(Excel.run((context) => addTypical(context, full, { typical: munich, mass: 1 }))).rejects.toThrow(/table is full/);
      expect(await malt("Malts")).toHaveLength(6);
    },
    benchTimeout,
  );

  it(
    "fill in what a line lacks, and leave what is typed",
    async () => {
      const batch = blank("us", "extract", "Tins");
      const sheetOf = await insertOn(bench, batch);
      const row = Number(sheetOf.cellOf("malt").replace(/\D/g, ""));
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Tins");
        sheet.getRange(`A${row}:C${row + 2}`).values = [
          ["Crystal, dark", 0.5, ""],
          ["Pale extract, liquid", 6, 80],
          ["Something else", 1, ""],
        ];
        await context.sync();
      });
      expect(unfilledLines(await look("Tins")).map(({ ingredient, missing }) => [ingredient, missing.join()])).toEqual([
        ["Crystal, dark", "yieldPercent,handling,colour"],
        ["Pale extract, liquid", "handling,colour"],
      ]);
      const sheet = await look("Tins");
      await Excel.run((context) => fillTypical(context, sheet));
      // Grain steeps where nothing is mashed, and colours are °L on a US sheet.
      expect(await malt("Tins")).toMatchObject([
        { ingredient: "Crystal, dark", mass: 0.5, yieldPercent: 72, handling: "steep", colour: 115 },
        { ingredient: "Pale extract, liquid", mass: 6, yieldPercent: 80, handling: "extract", colour: 4.5 },
        { ingredient: "Something else", mass: 1 },
      ]);
      expect(unfilledLines(await look("Tins"))).toEqual([]);
      expect(offeredOn(await look("Tins")).some(({ name }) => name === "Munich malt")).toBe(false);
    },
    benchTimeout,
  );
});
