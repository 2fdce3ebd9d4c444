import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { checkWorkbook } from "../../src/workbook/care/check/check-workbook";
import { copiesInWorkbook, giveOwnMark } from "../../src/workbook/brewing/companion/own-mark";
import { insertKit } from "../../src/workbook/sheets/kit/insert-kit";
import { learnKits } from "../../src/workbook/sheets/kit/learn-kits";
import { readBatchSheets } from "../../src/workbook/batch/read/batch-sheets";
import { markOf } from "../../src/workbook/batch/read/copied-sheets";
import { insertSeason } from "../../src/workbook/sheets/season/insert-season";
import { refreshSeason } from "../../src/workbook/sheets/season/refresh-season";
import { DrawRefused, planDraw, readStoresAndBatches, writeDraws } from "../../src/workbook/sheets/stores/draw";
import { insertStores } from "../../src/workbook/sheets/stores/insert-stores";
import { shoppingList } from "../../src/workbook/sheets/stores/shopping";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

/*
 * A brewer copies a batch sheet with Excel's own Move or Copy: first the sheet of a batch that was brewed, two litres
 * short, then that of a batch that is planned and has drawn. The tests below go on one after the other.
 */
const choices = {
  id: "brewed",
  sheetName: "Brewed",
  batchName: "Reed Bed",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
} as const;
const brewed = {
  ...exampleBatch(choices),
  wort: { collected: "", reading: 1.05, scale: "SG", sampleTemperature: 20, volume: 18 },
  readings: [{ when: 46277.5, reading: 1.012, scale: "SG", sampleTemperature: 20, beerTemperature: 19 }],
} as const;
const planned = exampleBatch({ ...choices, id: "planned", sheetName: "Planned", batchName: "Next" });
const paleMalt = brewed.malt[0]!;

let bench: HeadlessBench;
let original: BatchSheet;
const run = <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => Excel.run(work);
const marks = async () => Object.fromEntries((await run(readBatchSheets)).map(markOf).map(({ sheetName, id }) => [sheetName, id]));
const stores = async () => (await run(readStoresAndBatches))!;
const toBuy = async () => shoppingList(await stores()).find(({ name }) => name === paleMalt.ingredient);
const kit = async () => (await run(learnKits))!;
const boilOff = async () => (await kit()).kits[0]!.figures.find(({ key }) => key === "boilOff")!.learned;
const copy = async (name: string) => {
  await run(async (context) => {
    context.workbook.worksheets.getItem(name).copy("End");
    await context.sync();
  });
  await bench.calculate();
};
const type = async (sheetName: string, cell: string, value: number | string) => {
  await run(async (context) => {
    context.workbook.worksheets.getItem(sheetName).getRange(cell).values = [[value]];
    await context.sync();
  });
  await bench.calculate();
};

beforeAll(async () => {
  bench = await openBatchBench();
  original = await insertOn(bench, brewed);
  await insertOn(bench, planned);
  await run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46310 }));
  await run((context) => insertKit(context, { sheetName: "Kit", units: "metric", kitNames: ["Shed"] }));
  await run((context) =>
    insertStores(context, {
      sheetName: "Stores",
      units: "metric",
      today: 46310,
      stock: { malt: [{ name: paleMalt.ingredient, bought: 0.5 * paleMalt.mass, price: 1 }] },
    }),
  );
  await bench.calculate();
}, benchTimeout);
afterAll(() => bench.dispose());

describe("a copy of a batch that was brewed", () => {
  it(
    "stands in the season beside its original, which names both",
    async () => {
      await copy("Brewed");
      expect(await marks()).toMatchObject({ Brewed: "brewed", "Brewed (2)": "brewed" });
      expect(await run(copiesInWorkbook)).toEqual([["Brewed", "Brewed (2)"]]);
      expect(await run(refreshSeason)).toMatchObject({ batches: 3, added: ["Brewed (2)"], copies: [["Brewed", "Brewed (2)"]] });
    },
    benchTimeout,
  );

  it(
    "teaches the kit nothing twice, and says so; what was measured anew on it counts",
    async () => {
      expect(await kit()).toMatchObject({ copies: [["Brewed", "Brewed (2)"]], kits: [{ batches: 2 }] });
      // 20 L wanted, 18 L there, one hour: 2 L/h more than planned, told by one sheet and repeated by its copy.
      const once = await boilOff();
      expect(once.batches).toBe(1);
      await type("Brewed (2)", original.cellOf("volume_reached"), 19);
      expect((await boilOff()).batches).toBe(2);
      await type("Brewed (2)", original.cellOf("volume_reached"), 18);
      expect(await boilOff()).toEqual(once);
    },
    benchTimeout,
  );

  it(
    "is no batch of its own for the stores until it has a mark of its own",
    async () => {
      for (const name of ["Brewed", "Brewed (2)"]) {
        const found = await stores();
        expect(() => planDraw(found, name)).toThrow(DrawRefused);
      }
    },
    benchTimeout,
  );

  it(
    "gets a mark and a number of its own where the brewer says that it is the copy; the log that came along is told of",
    async () => {
      for (const name of ["Brewed", "Brewed (2)"]) await type(name, original.cellOf("batch_number"), 7);
      await type("Planned", original.cellOf("batch_number"), 12);
      expect(await run((context) => giveOwnMark(context, "Brewed (2)"))).toBe(true);
      const { Brewed, "Brewed (2)": own } = await marks();
      expect(Brewed).toBe("brewed");
      expect(["Brewed", "Brewed (2)", "Planned"].map((name) => bench.valueAt(name, original.cellOf("batch_number")))).toEqual([7, 13, 12]);
      expect(own).toMatch(/^[0-9a-z]{12}$/);
      expect(await run(copiesInWorkbook)).toEqual([]);
      expect(await run(refreshSeason)).toMatchObject({ batches: 3, written: 1, copies: [] });
      expect(bench.valueAt("Season", "Y43")).toBe(own);
      // Its log is still the other batch's to the letter, so the kit still learns once from both.
      expect(await kit()).toMatchObject({ copies: [["Brewed", "Brewed (2)"]] });
      expect((await boilOff()).batches).toBe(1);
      await expect(run((context) => giveOwnMark(context, "Brewed (2)"))).rejects.toThrow(
        'No other sheet carries the mark of "Brewed (2)" any more.',
      );
    },
    benchTimeout,
  );
});

describe("a copy of a batch that has drawn", () => {
  it(
    "has not drawn: the shopping list goes on to want its share, once",
    async () => {
      const found = await stores();
      // The shelf holds half of what the planned batch wants, so half is to be bought; afterwards all of the next one's.
      expect((await toBuy())?.toBuy).toBeCloseTo(0.5 * paleMalt.mass, 9);
      await run((context) => writeDraws(context, found, [{ plan: planDraw(found, "Planned"), day: 46310 }]));
      await bench.calculate();
      expect(await toBuy()).toBeUndefined();
      await copy("Planned");
      expect(await toBuy()).toMatchObject({ toBuy: paleMalt.mass, batches: ["Planned (2)"] });
    },
    benchTimeout,
  );

  it(
    "draws for itself as soon as it has a mark of its own, and the original has drawn as before",
    async () => {
      await type("Planned (2)", original.cellOf("batch_number"), 40);
      expect(await run((context) => giveOwnMark(context, "Planned (2)"))).toBe(false);
      expect(bench.valueAt("Planned (2)", original.cellOf("batch_number")), "a number that the brewer gave stays").toBe(40);
      const found = await stores();
      // The original took all that there was: a lot does not go below nothing.
      const { draws, shortages } = planDraw(found, "Planned (2)");
      expect(draws).toEqual([]);
      expect(shortages.filter(({ name }) => name === paleMalt.ingredient)).toMatchObject([{ amount: paleMalt.mass, left: 0 }]);
      expect(() => planDraw(found, "Planned")).toThrow('"Next" has drawn on the stores already. A batch draws once.');
      expect(await toBuy()).toMatchObject({ toBuy: paleMalt.mass, batches: ["Planned (2)"] });
    },
    benchTimeout,
  );
});

it(
  "the check of the workbook says what a copy is and where to say so",
  async () => {
    await copy("Planned (2)");
    const { sheets } = await run((context) => checkWorkbook(context, {}, 46310));
    const words = sheets.find(({ sheet }) => sheet === "Planned (2)")!.findings.map((finding) => finding.words);
    expect(words).toContainEqual(expect.stringMatching(/^Has the same mark as “Planned \(2\) \(2\)”.*Say which is the copy under Season/));
  },
  benchTimeout,
);
