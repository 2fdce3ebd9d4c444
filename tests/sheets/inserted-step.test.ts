import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { checkWorkbook } from "../../src/workbook/care/check/check-workbook";
import { repairFormulas } from "../../src/workbook/care/check/repair";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const choices = {
  id: "a",
  sheetName: "Day",
  batchName: "Day",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
} as const;

/** What the clock says, and what is printed of it. */
async function day(): Promise<{ readonly lines: string[]; readonly printed: string[] }> {
  const sheet = (await Excel.run((context) => readBatchSheet(context, "Day")))!;
  const lines = sheet.block("timeline").map((cells) => String(cells[2] ?? ""));
  const { from, to } = sheet.area("happened");
  const printed = Array.from({ length: to.row - from.row + 1 }, (_, index) => String(sheet.at(from.row + index, 1)));
  return { lines, printed };
}

describe("a row that is put in among the steps", () => {
  it(
    "is found by Check, and printed once it is repaired; no line of the day is lost",
    async () => {
      await insertOn(bench, exampleBatch(choices));
      const before = await day();
      expect(before.printed).toEqual(before.lines);
      const sheet = (await Excel.run((context) => readBatchSheet(context, "Day")))!;
      const row = sheet.area("steps").from.row + 3;
      await Excel.run(async (context) => {
        const there = context.workbook.worksheets.getItem("Day");
        there.getRange(`${row}:${row}`).insert("Down");
        there.getRange(`K${row}:N${row}`).values = [["Rest the mash, then stir once more", "before", 7, "Hot"]];
        await context.sync();
      });
      await bench.calculate();
      const unrepaired = await day();
      expect(unrepaired.lines).toContain("Rest the mash, then stir once more");
      expect(unrepaired.printed).not.toEqual(unrepaired.lines);
      const { sheets } = await Excel.run((context) => checkWorkbook(context, {}, 46270));
      const repairs = sheets.flatMap(({ findings }) => findings.flatMap(({ repair }) => (repair ? [repair] : [])));
      expect(repairs.map(({ address }) => address).sort()).toEqual(["A", "C", "D", "E", "G"].map((letter) => `${letter}${row}`));
      await Excel.run((context) => repairFormulas(context, repairs));
      await bench.calculate();
      const after = await day();
      expect(after.printed).toEqual(after.lines);
      expect(after.printed.filter((line) => line !== "")).toHaveLength(before.printed.filter((line) => line !== "").length + 1);
    },
    benchTimeout,
  );
});
