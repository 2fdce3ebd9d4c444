import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { blocksFor } from "../../src/workbook/batch/fields/blocks";
import { withBlocks } from "../../src/workbook/batch/new-batch";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { checkWorkbook } from "../../src/workbook/care/check/check-workbook";
import { addBlocks } from "../../src/workbook/care/grow/add-blocks";
import { unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { address, block } from "../../src/workbook/grid/plan/addresses";
import { benchTimeout, insertOn, openBatchBench, sheetOf, type BatchSheet } from "../support/batch-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const example = (sheetName: string) =>
  exampleBatch({
    ...{ id: sheetName, sheetName, batchName: "Full", brewedOn: 46270, volume: 20, units: "metric", topUp: 0, method: "all-grain" },
  });

/** As many hops as the table has rows, a stand and two dry ones among them: typed once the sheet stands. */
const bill = [
  ["First", 20, 8, 60],
  ["Second", 10, 8, 10],
  ["Third", 10, 8, 0],
  ["Fourth", 30, 8, "stand"],
  ["Fifth", 40, 8, "dry"],
  ["Sixth", 50, 8, "dry"],
] as const;

async function typed(sheet: BatchSheet): Promise<void> {
  const { from } = block(sheet.rangeOf("hop_plan"));
  await Excel.run(async (context) => {
    const range = `${address(from.row, from.column)}:${address(from.row + bill.length - 1, from.column + 3)}`;
    context.workbook.worksheets.getItem(sheet.sheetName).getRange(range).values = bill.map((line) => [...line]);
    await context.sync();
  });
  await sheet.set({ stand_minutes: 20, stand_temperature: 80 });
}

/** What is printed in columns A and E of a sheet, without what stands empty. */
async function printedHops(sheetName: string): Promise<string[]> {
  return Excel.run(async (context) => {
    const used = context.workbook.worksheets.getItem(sheetName).getRange("A1:E260").load("values");
    await context.sync();
    return used.values
      .map((row) => `${String(row[0])} · ${String(row[4])}`)
      .filter((words) => /^(Add |Dry hops, another|Brew day done)/.test(words));
  });
}
const everyLine = [
  "Add First · 20 g",
  "Add Second · 10 g",
  "Add Third · 10 g",
  "Add Fourth for the stand · 30 g",
  "Brew day done · ",
  "Dry hops, another day: Fifth · 40 g",
  "Dry hops, another day: Sixth · 50 g",
];
const clockSays = (sheet: BatchSheet): string | undefined => sheet.complaints().find(({ label }) => label.startsWith("Clock"))?.text;

describe("a brew day with every hop that its table holds", () => {
  it(
    "is printed to its last line where hops go in late, also on a sheet that got its blocks later, and in its unplugged copy",
    async () => {
      for (const [name, later] of [
        ["Chosen", false],
        ["Later", true],
      ] as const) {
        const blocks = blocksFor("all-grain");
        const chosen = withBlocks(example(name), blocks);
        const sheet = later ? sheetOf(bench, chosen) : await insertOn(bench, chosen);
        if (later) {
          await typed(await insertOn(bench, example(name)));
          const { kept } = await Excel.run((context) => addBlocks(context, name, blocks));
          expect(kept).toEqual([]);
          await bench.calculate();
        } else await typed(sheet);
        expect(await printedHops(name)).toEqual(everyLine);
        expect(clockSays(sheet)).toBeUndefined();
        // What stands is what is compared: more hops make no other sheet.
        const { sheets } = await Excel.run((context) => checkWorkbook(context, {}, 46270));
        expect(sheets.flatMap(({ findings }) => findings.filter(({ repair }) => repair))).toEqual([]);
      }
      await Excel.run((context) => unpluggedCopies(context, ["Later"], { prices: true, standalone: false }));
      await bench.calculate();
      expect(await printedHops("Later unplugged")).toEqual(everyLine);
    },
    benchTimeout,
  );

  it(
    "is told to be longer than what is printed where there is no such block, and counts the lines",
    async () => {
      const sheet = await insertOn(bench, example("Plain"));
      await typed(sheet);
      const lines = (await Excel.run((context) => readBatchSheet(context, "Plain")))!.block("timeline").length;
      expect(clockSays(sheet)).toBe(`The day has 25 lines, but only ${lines} are printed: the last ones stand from column Q on.`);
      expect(await printedHops("Plain")).toEqual(everyLine.slice(0, 5));
    },
    benchTimeout,
  );
});
