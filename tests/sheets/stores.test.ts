import { drawFor } from "../../src/pane/stores/stores-work";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { agedAlphaPercent } from "../../src/core/hops/storage";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { giveOwnMark } from "../../src/workbook/brewing/companion/own-mark";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { agedHops, writeAgedHops } from "../../src/workbook/sheets/stores/aged-hops";
import { DrawRefused, giveBack, planDraw, readStoresAndBatches, type StoresAndBatches } from "../../src/workbook/sheets/stores/draw";
import { insertStores } from "../../src/workbook/sheets/stores/insert-stores";
import { shoppingList, writeShoppingList } from "../../src/workbook/sheets/stores/shopping";
import { benchTimeout, openBatchBench } from "../support/batch-bench";

/* A metric store and a US batch: 5 US gal of the example, 5.7 lb and 1.2 lb of extract, 0.6 lb of crystal malt. */
const batch = exampleBatch({
  id: "one",
  sheetName: "Batch 1",
  batchName: "One",
  brewedOn: 46270,
  volume: 5,
  units: "us",
  topUp: 0,
  method: "extract",
});
const hop = { alphaPercent: 8.5, openedOn: 46150, storedAt: 4, package: "sealed" } as const;

let bench: HeadlessBench;
const run = <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => Excel.run(work);
const read = async (): Promise<StoresAndBatches> => (await run(readStoresAndBatches))!;
const shelf = (name: string): { row: number; left: unknown; drawn: unknown } => {
  for (let row = 4; row < 60; row += 1)
    if (bench.valueAt("Stores", `A${row}`) === name)
      return { row, left: bench.valueAt("Stores", `F${row}`), drawn: bench.valueAt("Stores", `E${row}`) };
  throw new Error(`no ${name} on the shelves`);
};

beforeAll(async () => {
  bench = await openBatchBench();
  await run((context) => insertBatch(context, batch));
  await run((context) =>
    insertStores(context, {
      sheetName: "Stores",
      units: "metric",
      today: 46300,
      stock: {
        malt: [
          { name: "Pale malt extract, liquid", bought: 6, price: 8 },
          { name: "Crystal malt, light", bought: 0.2, price: 3 },
        ],
        hops: [
          { name: "chinook", bought: 100, price: 6, dated: 45935, hop },
          { name: "Willamette", bought: 200, price: 5, dated: 45935, hop: { ...hop, openedOn: "" } },
        ],
        yeast: [{ name: "Clean ale yeast, dry, 10 g", bought: 3, price: 4.5 }],
        caps: [{ name: "Crown caps", bought: 250, price: 0.03 }],
      },
    }),
  );
  await bench.calculate();
}, benchTimeout);
afterAll(() => bench.dispose());

describe("the stores", () => {
  it("age each hop in one column: shut in its packet, then open", () => {
    const { row } = shelf("chinook");
    const shut = agedAlphaPercent(8.5, 46150 - 45935, 4, 30, "sealed");
    expect(bench.valueAt("Stores", `M${row}`)).toBeCloseTo(agedAlphaPercent(shut, 46300 - 46150, 4, 30, "loose"), 9);
    expect(bench.valueAt("Stores", `M${row + 1}`)).toBeCloseTo(agedAlphaPercent(8.5, 46300 - 45935, 4, 30, "sealed"), 9);
    expect(bench.valueAt("Stores", `M${row + 2}`) ?? "").toBe("");
  });

  it(
    "tell what is missing for the batches planned, in their own units",
    async () => {
      const found = await read();
      const lines = shoppingList(found);
      // NIST SP 811: 1 lb = 0.45359237 kg.
      expect(lines.find(({ name }) => name === "Crystal malt, light")).toMatchObject({ left: 0.2, unit: "kg", batches: ["Batch 1"] });
      expect(lines.find(({ name }) => name === "Crystal malt, light")!.toBuy).toBeCloseTo(0.6 * 0.45359237 - 0.2, 9);
      expect(lines.find(({ name }) => name === "Wheat malt extract, dry")).toMatchObject({ left: 0 });
      expect(lines.find(({ name }) => name === "Pale malt extract, liquid")).toBeUndefined();
      expect(await run((context) => writeShoppingList(context, found, lines))).toBe(0);
      await bench.calculate();
      expect([bench.valueAt("Stores", "A57"), bench.valueAt("Stores", "D57")]).toEqual([lines[0]!.name, lines[0]!.toBuy]);
    },
    benchTimeout,
  );

  it(
    "offer the alpha of the brewing day for the batch's hop table, and write it where asked",
    async () => {
      const { stores, batches } = await read();
      const hops = agedHops(stores, batches[0]!);
      expect(hops.map(({ hop: name }) => name)).toEqual(["Chinook", "Willamette", "Chinook"]);
      const shut = agedAlphaPercent(8.5, 46150 - 45935, 4, 30, "sealed");
      expect(hops[0]).toMatchObject({ printedPercent: 8.5, inBatchPercent: 11.8 });
      expect(hops[0]!.onTheDayPercent).toBeCloseTo(agedAlphaPercent(shut, 46270 - 46150, 4, 30, "loose"), 9);
      await run((context) => writeAgedHops(context, "Batch 1", hops.slice(0, 1)));
      await bench.calculate();
      expect(bench.valueAt("Batch 1", hops[0]!.cell)).toBeCloseTo(hops[0]!.onTheDayPercent, 1);
    },
    benchTimeout,
  );

  it(
    "write no alpha into a hop table that is not what was shown any more",
    async () => {
      const { stores, batches } = await read();
      const hops = agedHops(stores, batches[0]!);
      const [name = "", alpha = ""] = [hops[1]!.line.range.split(":")[0], hops[1]!.cell];
      const swap = (hop: string) =>
        Excel.run(async (context) => {
          context.workbook.worksheets.getItem("Batch 1").getRange(name).values = [[hop]];
          await context.sync();
        });
      const [before, first] = [bench.valueAt("Batch 1", alpha), bench.valueAt("Batch 1", hops[0]!.cell)];
      await swap("Challenger");
      await expect(run((context) => writeAgedHops(context, "Batch 1", hops))).rejects.toThrow("Somebody has just changed");
      await bench.calculate();
      expect([bench.valueAt("Batch 1", name), bench.valueAt("Batch 1", alpha), bench.valueAt("Batch 1", hops[0]!.cell)]).toEqual([
        "Challenger",
        before,
        first,
      ]);
      await swap(hops[1]!.hop);
      await bench.calculate();
    },
    benchTimeout,
  );
});

describe("drawing", () => {
  it(
    "takes the batch's share once, and names what is short",
    async () => {
      const found = await read();
      const plan = planDraw(found, "Batch 1");
      expect(plan.shortages.map(({ name, left }) => [name, left])).toEqual([
        ["Crystal malt, light", 0.2],
        ["Wheat malt extract, dry", undefined],
      ]);
      const state = await drawFor("Batch 1");
      await bench.calculate();
      // 0.6 lb wanted, 0.2 kg there: the lot is empty, not below nothing; 0.2 kg at 3 are paid, and the rest is named. 1.2 lb are 0.54 kg.
      expect([shelf("Crystal malt, light").left, shelf("Crystal malt, light").drawn]).toEqual([0, 0.2]);
      const crystal = (await read()).stores.draws.filter(({ name }) => name === "Crystal malt, light");
      expect(crystal.map(({ amount, cost }) => [amount, Math.round(cost! * 1e6) / 1e6])).toEqual([[0.2, 0.6]]);
      expect(state.kind === "there" && state.said).toMatch(
        / Not there, so neither drawn nor in the costs: 0\.07 kg of Crystal malt, light; 0\.54 kg of Wheat malt extract, dry\. Once you have bought the rest, put it all back and draw again\.$/,
      );
      expect(shelf("Pale malt extract, liquid").left).toBeCloseTo(6 - 5.7 * 0.45359237, 9);
      // The first hop goes in twice; 1 oz = 28.349523125 g.
      expect(shelf("Willamette").drawn).toBeCloseTo(1.3 * 28.349523125, 6);
      expect(shelf("chinook").drawn).toBeCloseTo((0.55 + 0.7) * 28.349523125, 6);
      expect(shelf("Clean ale yeast, dry, 10 g").drawn).toBeGreaterThan(0);
      expect(shelf("Crown caps").drawn).toBeGreaterThan(40);
      const again = await read();
      expect(() => planDraw(again, "Batch 1")).toThrow(DrawRefused);
      expect(shoppingList(again)).toEqual([]);
    },
    benchTimeout,
  );

  it(
    "does not draw for a copy of the sheet, and names it",
    async () => {
      await run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").copy("End");
        await context.sync();
      });
      await bench.calculate();
      const found = await read();
      expect(() => planDraw(found, "Batch 1 (2)")).toThrow(
        '"Batch 1 (2)" carries the same mark as "Batch 1", and one of them has drawn on the stores already. Say first which is the copy: it gets a mark of its own. Nothing was taken.',
      );
      expect(await run((context) => giveOwnMark(context, "Batch 1 (2)"))).toBe(false);
    },
    benchTimeout,
  );

  it(
    "gives back what was drawn, and then may draw again",
    async () => {
      const lines = (await read()).stores.draws.length;
      const found = await read();
      expect(await run((context) => giveBack(context, found, "one"))).toBe(lines);
      await bench.calculate();
      expect([shelf("Willamette").drawn, shelf("Willamette").left]).toEqual([0, 200]);
      expect(planDraw(await read(), "Batch 1").draws).toHaveLength(lines);
    },
    benchTimeout,
  );

  it(
    "wants lots apart on a shelf",
    async () => {
      const { row } = shelf("Willamette");
      await run(async (context) => {
        context.workbook.worksheets.getItem("Stores").getRange(`A${row + 1}`).values = [["WILLAMETTE"]];
        await context.sync();
      });
      await bench.calculate();
      const found = await read();
      expect(() => planDraw(found, "Batch 1")).toThrow('Two lines of the stores are called "WILLAMETTE"');
    },
    benchTimeout,
  );

  it(
    "is inserted once",
    async () => {
      await expect(run((context) => insertStores(context, { sheetName: "Stores 2", units: "us", today: 1 }))).rejects.toThrow(
        "a stores sheet already",
      );
    },
    benchTimeout,
  );
});
