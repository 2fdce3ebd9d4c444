import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { InsertionRefused, insertBatch } from "../../src/workbook/batch/insert-batch";
import { collectComputed } from "../../src/excel-stand-in/computed";
import { openWorkbook, saveWorkbook } from "../../src/excel-stand-in/xlsx";
import { registry } from "../../src/functions/registry";
import { benchTimeout, openBatchBench, sheetOf } from "../support/batch-bench";

const contents = newBatch({
  id: "test",
  sheetName: "Batch 1",
  batchName: "One",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "extract",
});

let bench: HeadlessBench;
let before: string;
beforeEach(async () => {
  bench = await openBatchBench();
  await Excel.run(async (context) => {
    context.workbook.worksheets.getItem("Sheet1").getRange("A1:B2").formulas = [
      ["mine", 1],
      ["=GYLE.BEER.ABV(1.05,1.01)", 2],
    ];
    await context.sync();
  });
  await bench.calculate();
  before = contentOf(bench);
}, benchTimeout);
afterEach(() => bench.dispose());

/** What a user would see: the sheets, their cells, names and tables. */
function contentOf({ snapshot }: HeadlessBench): string {
  const { sheetOrder, sheets, resources } = snapshot();
  return JSON.stringify({
    sheets: sheetOrder.map((id) => ({ name: sheets[id]?.name, cells: sheets[id]?.cellData })),
    names: resources?.find(({ name }) => name === "SHEET_DEFINED_NAME_PLUGIN")?.data ?? "",
    tables: resources?.find(({ name }) => name === "SHEET_TABLE_PLUGIN")?.data ?? "",
  });
}

const insert = (sheetName = contents.sheetName) => Excel.run((context) => insertBatch(context, { ...contents, sheetName }));
const names = async () => {
  let found: string[] = [];
  await Excel.run(async (context) => {
    const sheets = context.workbook.worksheets;
    sheets.load("items/name");
    await context.sync();
    found = sheets.items.map(({ name }) => name);
  });
  return found;
};

describe("inserting a batch", () => {
  it(
    "needs at most three round trips and leaves the other sheet alone",
    async () => {
      const { faults } = bench.host;
      const syncs = faults.syncCount;
      await insert();
      expect(faults.syncCount - syncs).toBeLessThanOrEqual(3);
      expect(await names()).toEqual(["Sheet1", "Batch 1"]);
      expect(bench.valueAt("Sheet1", "A1")).toBe("mine");
    },
    benchTimeout,
  );

  it(
    "leaves what was typed before it undoable, and is one step to undo",
    async () => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Sheet1").getRange("A1").values = [["typed"]];
        await context.sync();
      });
      await insert();
      await bench.univerAPI.undo();
      expect([await names(), bench.valueAt("Sheet1", "A1")]).toEqual([["Sheet1"], "typed"]);
      await bench.univerAPI.undo();
      expect(bench.valueAt("Sheet1", "A1")).toBe("mine");
      expect(JSON.parse(contentOf(bench))).toMatchObject({ sheets: (JSON.parse(before) as { sheets: unknown }).sheets });
    },
    benchTimeout,
  );

  it(
    "leaves a sheet alone that somebody else made under the name wanted, between its look and its writing",
    async () => {
      await Excel.run(async (context) => {
        const sync = context.sync.bind(context);
        let trips = 0;
        context.sync = (async () => {
          trips += 1;
          if (trips === 2) {
            await Excel.run(async (other) => {
              other.workbook.worksheets.add("Batch 1").getRange("A1").values = [["theirs"]];
              await other.sync();
            });
          }
          return sync();
        }) as typeof context.sync;
        await expect(insertBatch(context, contents)).rejects.toBeInstanceOf(InsertionRefused);
      });
      expect([await names(), bench.valueAt("Batch 1", "A1")]).toEqual([["Sheet1", "Batch 1"], "theirs"]);
    },
    benchTimeout,
  );

  it(
    "asks before a name that is taken, in any case of letters, and offers a free one",
    async () => {
      await insert();
      const refusal = await insert("BATCH 1").catch((problem: unknown) => problem);
      expect(refusal).toBeInstanceOf(InsertionRefused);
      expect((refusal as InsertionRefused).message).toContain('There is a sheet "BATCH 1" already');
      expect((refusal as InsertionRefused).freeName).toBe("BATCH 1 (2)");
      expect(await names()).toEqual(["Sheet1", "Batch 1"]);
      await insert("BATCH 1 (2)");
      expect(await names()).toEqual(["Sheet1", "Batch 1", "BATCH 1 (2)"]);
    },
    benchTimeout,
  );

  it(
    "calculates under every name that Excel allows, and is found again in a saved file",
    async () => {
      const hostile = ["Brewer's best", "🍺 Pale", "=1+1", "-5", "2026-09-05", "A1", "R1C1", "TRUE", "Größe 7 & <b>", "x".repeat(31)];
      for (const name of hostile) await insert(name);
      await bench.calculate();
      const sheets = hostile.map((name) => sheetOf(bench, { ...contents, sheetName: name }));
      expect(sheets.map((sheet) => sheet.number("water_collect"))).toEqual(hostile.map(() => sheets[0]!.number("water_collect")));
      expect(sheets.flatMap((sheet) => sheet.complaints())).toEqual([]);
      const snapshot = bench.snapshot();
      const again = await openWorkbook(await saveWorkbook(snapshot, collectComputed(bench.engine, snapshot)), {
        functionNames: registry.map(({ id }) => id),
      });
      expect(again.snapshot.sheetOrder.map((id) => again.snapshot.sheets[id]?.name)).toEqual(["Sheet1", ...hostile]);
    },
    benchTimeout,
  );

  it.each(["", "Pale / ale", "'Pale", "History", "x".repeat(32)])(
    "refuses the name “%s” in words and writes nothing",
    async (name) => {
      const { faults } = bench.host;
      const syncs = faults.syncCount;
      await expect(insert(name)).rejects.toBeInstanceOf(InsertionRefused);
      expect(faults.syncCount).toBe(syncs);
      expect(contentOf(bench)).toBe(before);
    },
    benchTimeout,
  );
});
