import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { address } from "../../src/workbook/grid/plan/addresses";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { readBatchFile } from "../../src/workbook/exchange/batch-file/read-batch-file";
import { batchToShare, placeFor } from "../../src/workbook/sheets/batch-to-share";
import { readingTableRows } from "../../src/workbook/batch/sheet/readings";
import { shareable } from "../../src/workbook/exchange/batch-file/shareable";
import { writeBatchFile } from "../../src/workbook/exchange/batch-file/write-batch-file";
import { addToClub, insertClub } from "../../src/workbook/sheets/club/add-to-club";
import { replaceOnClub, standingOnClub } from "../../src/workbook/sheets/club/replace-on-club";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { batchesInWorkbook } from "../../src/workbook/sheets/batches-in-workbook";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { insertPage } from "../../src/workbook/sheets/pages/insert-page";
import type { LogRow } from "../../src/workbook/exchange/readings-file/read-log";
import { keepLog, writeReadings } from "../../src/workbook/exchange/readings-file/write-readings";
import { convertUnits } from "../../src/workbook/batch/scale/convert-units";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";

let bench: HeadlessBench;
beforeEach(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterEach(() => bench.dispose());

const mashed: BatchContents = {
  ...exampleBatch({
    id: "m1",
    sheetName: "Mashed",
    batchName: "Reed Bed Bitter",
    brewedOn: 46270,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "all-grain",
  }),
  wort: { collected: "", reading: 1.049, scale: "SG", sampleTemperature: 20, volume: 21 },
  readings: [
    { when: 46277.5, reading: 1.012, scale: "SG", sampleTemperature: 20, beerTemperature: 19 },
    { when: 46278.6, reading: 1.012, scale: "SG", sampleTemperature: 20, beerTemperature: 19 },
  ],
};
const hostile: BatchContents = {
  ...mashed,
  sheetName: "Words",
  batchName: "=1+1",
  style: "1/2",
  malt: [{ ingredient: "+2", mass: 4, yieldPercent: 80, handling: "mash", colour: 5, cost: "", remark: "@x" }],
  tasting: { ...mashed.tasting, notes: "- drier next time" },
};

const at = (sheet: string, cell: string) => bench.valueAt(sheet, cell);
const sheetNames = () =>
  Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    return worksheets.items.map(({ name }) => name);
  });
/** Every cell with something in it, of every sheet. */
const everything = () =>
  JSON.stringify(bench.snapshot().sheetOrder.map((id) => [bench.snapshot().sheets[id]?.name, bench.snapshot().sheets[id]?.cellData]));

/** How many round trips something takes. */
async function tripsOf(action: () => Promise<unknown>): Promise<number> {
  const before = bench.host.faults.syncCount;
  await action();
  return bench.host.faults.syncCount - before;
}

describe("a batch file in the workbook", () => {
  it(
    "is read from a sheet, taken in again on a second one, and its words are words",
    async () => {
      for (const batch of [mashed, hostile]) await insertOn(bench, batch);
      const workbook = await Excel.run(batchesInWorkbook);
      for (const batch of workbook.batches) {
        const read = readBatchFile(writeBatchFile(batchToShare(batch), { prices: true }));
        expect(read).toEqual(shareable(batch.contents, { prices: true }));
        const place = placeFor(read, workbook);
        expect(place.hereAlready).toBe("Mashed");
        expect(place.sheetName).toBe(`${batch.sheetName} (2)`);
        await insertOn(bench, { ...read, sheetName: place.sheetName });
        const back = await Excel.run((context) => readBatchSheet(context, place.sheetName));
        expect(back && { ...batchContents(back), sheetName: batch.sheetName }).toEqual(read);
      }
      expect(at("Words (2)", "A1")).toBe("=1+1");
    },
    benchTimeout,
  );

  it(
    "lets no formula of the brewer's own travel that another workbook would refuse",
    async () => {
      const steps: BatchContents["steps"] = [
        { what: '="Heat "&TEXT(volume,"0")&" L"', part: "before", minutes: "=N(boil_minutes)", caution: "", why: "" },
        { what: '="Cell "&Sheet1!A1', part: "boil", minutes: "=INDEX(Sheet1!A1:A1,1)", caution: "", why: "" },
      ];
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Sheet1").getRange("A1").values = [[7]];
        await context.sync();
      });
      await insertOn(bench, { ...mashed, steps });
      const [batch] = (await Excel.run(batchesInWorkbook)).batches;
      if (!batch) throw new Error("no batch");
      expect(readBatchFile(writeBatchFile(batchToShare(batch), { prices: true })).steps).toEqual([
        steps[0],
        { ...steps[1], what: "Cell 7", minutes: 7 },
      ]);
    },
    benchTimeout,
  );
});

describe("a hand-out", () => {
  it(
    "keeps the plan in their volume and units, and leaves the brewer's own record behind",
    async () => {
      const original = { ...firstExtractBatch(), tasting: { ...firstExtractBatch().tasting, notes: "private" } };
      const blank = handOut(original, { name: "For the class", brewedOn: 46300, volume: 10, units: "metric", prices: false });
      const sheet = await insertOn(bench, blank);
      const plan = await insertOn(bench, original);
      expect(Math.abs(sheet.number("og_plan") - plan.number("og_plan"))).toBeLessThan(0.001);
      expect(Math.abs(sheet.number("ibu_plan") - plan.number("ibu_plan"))).toBeLessThan(1);
      expect(sheet.complaints()).toEqual([]);
      expect(
        [sheet.get("og_reading"), sheet.get("notes"), sheet.get("score"), sheet.get("cost_plan"), sheet.get("verdict")].map(
          (value) => value ?? "",
        ),
      ).toEqual(["", "", "", "", ""]);
      expect(sheet.get("batch_id")).not.toBe(original.id);
      expect(String(at("For the class", sheet.cellOf("steps")))).toContain("Clean all");
      expect(JSON.stringify(blank)).not.toContain("private");
    },
    benchTimeout,
  );
});

describe("the club sheet", () => {
  const entries = [
    { member: "Ada", batch: firstExtractBatch() },
    { member: "Ben", batch: mashed },
  ];
  it(
    "sets members' batches side by side in one unit system, with mean and spread",
    async () => {
      const us = await insertOn(bench, firstExtractBatch());
      await Excel.run((context) => insertClub(context, { sheetName: "Club", units: "metric", entries }));
      await bench.calculate();
      const row = (label: string): number =>
        Array.from({ length: 40 }, (_, index) => index + 1).find((index) => at("Club", `A${index}`) === label) ?? 0;
      const shown = (label: string, column = "B") => at("Club", `${column}${row(label)}`);
      expect([shown("Member"), shown("Member", "C"), shown("Member", "D") ?? ""]).toEqual(["Ada", "Ben", ""]);
      expect(shown("Into the fermenter, L")).toBeCloseTo(5 * 3.785411784, 6);
      expect(shown("Original gravity, planned")).toBeCloseTo(us.number("og_plan"), 9);
      expect(shown("Original gravity, reached")).toBeCloseTo(us.number("og"), 6);
      expect(shown("Final gravity, reached")).toBeCloseTo(us.number("fg"), 6);
      expect(shown("Alcohol, reached, %")).toBeCloseTo(us.number("abv_reached"), 4);
      expect(shown("Bitterness, planned, IBU")).toBeCloseTo(us.number("ibu_plan"), 4);
      expect(shown("Colour, planned")).toBeCloseTo((us.number("colour_plan") * 25) / 12.7, 4);
      expect(shown("About this colour")).toBe(us.get("swatch"));
      expect(shown("Mean of the scores")).toBe(4);
      // Scores 4, 4, 4, 3, 5 around their mean 4: √(2 / 4).
      expect(shown("Spread of the scores ±")).toBeCloseTo(Math.SQRT1_2, 9);
      const both = [Number(shown("Original gravity, reached")), Number(shown("Original gravity, reached", "C"))];
      expect(shown("Original gravity, reached", "L")).toBeCloseTo((both[0]! + both[1]!) / 2, 9);
      expect(shown("Original gravity, reached", "M")).toBeCloseTo(Math.abs(both[0]! - both[1]!) / Math.SQRT2, 9);
      for (let r = 1; r < 45; r += 1)
        for (const c of "ABCDEFGHIJKLM") expect(String(at("Club", `${c}${r}`)), `${c}${r}`).not.toMatch(/^#[A-Z/]+[!?A]?$/);

      await Excel.run((context) => addToClub(context, "Club", [{ member: "Cleo", batch: { ...hostile, id: "m2" } }]));
      await bench.calculate();
      expect([shown("Member", "D"), shown("Beer", "D")]).toEqual(["Cleo", "=1+1"]);
      await expect(Excel.run((context) => addToClub(context, "Club", [{ member: "Ben", batch: mashed }]))).rejects.toThrow(
        "stands on “Club” already",
      );
      const eight = Array.from({ length: 8 }, (_, index) => ({ member: `M${index}`, batch: { ...mashed, id: `x${index}` } }));
      await expect(Excel.run((context) => addToClub(context, "Club", eight))).rejects.toThrow("room for 7 more batches, not 8");
    },
    benchTimeout,
  );

  it(
    "takes a member's batch in anew in its own row, where the user says yes to what was shown",
    async () => {
      await Excel.run((context) =>
        insertClub(context, {
          sheetName: "Club",
          units: "metric",
          entries: [...entries, { member: "Cleo", batch: { ...hostile, id: "m2" } }],
        }),
      );
      const on = async (cells: Record<string, string | number>) => {
        await Excel.run(async (context) => {
          for (const [cell, content] of Object.entries(cells))
            context.workbook.worksheets.getItem("Club").getRange(cell).formulas = [[content]];
          await context.sync();
        });
        await bench.calculate();
      };
      // Beside the facts, from column AI on, and in a row of another member: the user's own.
      await on({ AJ5: "=S5*1000", AK5: "brought two bottles", AK6: "late", S6: "=1.04+0.01" });
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Club").notes.add("P5", "poured second");
        await context.sync();
      });
      const rest = () => ["O4", "P4", "S4", "AK5", "AK6", "O6", "P6", "AG6", "O7"].map((cell) => at("Club", cell) ?? "");
      const before = rest();
      const dried: BatchContents = {
        ...mashed,
        readings: mashed.readings.map((reading) => ({ ...reading, reading: 1.01 })),
        tasting: { ...mashed.tasting, looks: { ...mashed.tasting.looks, score: 5 } },
      };
      const ben = { member: "Ben", batch: dried };
      const agreed = await Excel.run((context) => standingOnClub(context, "Club", [ben]));
      expect(agreed).toHaveLength(1);
      const told = Object.fromEntries(agreed[0]!.changes.map(({ fact, was, becomes }) => [fact, [was, becomes]]));
      expect(Object.keys(told)).toEqual(["fgReached", "looks"]);
      expect(told["looks"]).toEqual([mashed.tasting.looks.score, 5]);
      await expect(Excel.run((context) => addToClub(context, "Club", [ben]))).rejects.toThrow("stands on “Club” already");

      const dora = { member: "Dora", batch: { ...mashed, id: "m9" } };
      expect(await tripsOf(() => Excel.run((context) => replaceOnClub(context, "Club", [ben], agreed)))).toBe(3);
      await bench.calculate();
      expect(at("Club", "W5")).toBe(told["fgReached"]![1]);
      expect(at("Club", "AB5")).toBe(5);
      expect(at("Club", "AJ5")).toBeCloseTo(Number(at("Club", "S5")) * 1000, 9);
      expect(rest()).toEqual(before);
      const note = await Excel.run(async (context) => {
        const found = context.workbook.worksheets.getItem("Club").notes.getItem("P5").load("content");
        await context.sync();
        return found.content;
      });
      expect(note).toBe("poured second");

      // Together with a batch that is new: the rows between stay what they are, a formula and words that look like one.
      const again = await Excel.run((context) => standingOnClub(context, "Club", [ben, dora]));
      expect(again.map(({ entry, changes }) => [entry.member, changes])).toEqual([["Ben", []]]);
      await Excel.run((context) => replaceOnClub(context, "Club", [ben, dora], again));
      await bench.calculate();
      expect([at("Club", "O7"), at("Club", "P6"), at("Club", "S6")]).toEqual(["Dora", "=1+1", 1.05]);
      await on({ S5: 1.099 });
      expect(at("Club", "AJ5")).toBeCloseTo(1099, 9);
      await expect(Excel.run((context) => replaceOnClub(context, "Club", [ben], agreed))).rejects.toThrow(
        "Somebody has changed “Club” since you looked at it",
      );
      expect(at("Club", "S5")).toBe(1.099);
    },
    benchTimeout,
  );

  it(
    "shows the club no private words, though the batch comes from this workbook and not from a file",
    async () => {
      const secret: BatchContents = {
        ...mashed,
        style: "private 7781 try",
        tasting: { ...mashed.tasting, notes: "Private 7781: too thin" },
      };
      await Excel.run((context) =>
        insertClub(context, { sheetName: "Club", units: "metric", entries: [{ member: "Ada", batch: secret }] }),
      );
      await Excel.run((context) => addToClub(context, "Club", [{ member: "Ben", batch: { ...secret, id: "m4" } }]));
      const ben = { member: "Ben", batch: { ...secret, id: "m4", batchName: "Private 7781" } };
      const agreed = await Excel.run((context) => standingOnClub(context, "Club", [ben]));
      expect(agreed[0]?.changes.map(({ fact, becomes }) => [fact, becomes])).toEqual([["beer", ""]]);
      await Excel.run((context) => replaceOnClub(context, "Club", [ben], agreed));
      await bench.calculate();
      expect(everything()).not.toContain("7781");
      expect(everything()).toContain("Ben");
    },
    benchTimeout,
  );

  it(
    "is made and added to in three round trips at most",
    async () => {
      const make = () => Excel.run((context) => insertClub(context, { sheetName: "Club", units: "us", entries }));
      expect(await tripsOf(make)).toBeLessThanOrEqual(3);
      await bench.calculate();
      expect(
        await tripsOf(() => Excel.run((context) => addToClub(context, "Club", [{ member: "Cleo", batch: { ...mashed, id: "m3" } }]))),
      ).toBeLessThanOrEqual(3);
    },
    benchTimeout,
  );
});

describe("the recipe page", () => {
  it.each([firstExtractBatch(), mashed])(
    "repeats the sheet of $sheetName and follows it",
    async (batch) => {
      const sheet = await insertOn(bench, batch);
      const before = everything();
      const page = await Excel.run((context) => insertPage(context, batch.sheetName, "recipe"));
      await bench.calculate();
      const cells: string[] = [];
      for (let r = 1; r < 75; r += 1)
        for (const c of "ABCDEFGH") if ((at(page, `${c}${r}`) ?? "") !== "") cells.push(String(at(page, `${c}${r}`)));
      expect(cells.filter((cell) => /^#[A-Z/]+[!?A]$/.test(cell))).toEqual([]);
      expect(cells).toContain(batch.batchName);
      for (const name of ["og_plan", "ibu_plan", "water_collect", "swatch"]) expect(cells, name).toContain(String(sheet.get(name)));
      for (const { ingredient } of batch.malt) expect(cells).toContain(ingredient);
      expect(cells.filter((cell) => cell.includes("Chiller"))).toHaveLength(1);
      await sheet.set({ batch_name: "Renamed" });
      expect(at(page, "A1")).toBe("Renamed");
      expect(before).not.toBe("");
    },
    benchTimeout,
  );
  it(
    "holds no call of ours",
    async () => {
      await insertOn(bench, mashed);
      expect(await tripsOf(() => Excel.run((context) => insertPage(context, "Mashed", "recipe")))).toBeLessThanOrEqual(5);
      const page = bench.snapshot().sheets[bench.snapshot().sheetOrder.at(-1) ?? ""];
      expect(JSON.stringify(page?.cellData)).not.toContain("GYLE.");
    },
    benchTimeout,
  );
});

describe("readings of a device", () => {
  const rows: LogRow[] = Array.from({ length: 600 }, (_, index) => ({
    when: 46271 + index / 50,
    gravity: 1.011 + 0.039 / (1 + Math.exp(1.5 * (index / 50 - 2.5))),
    temperatureC: 19.5,
    line: index + 2,
  }));
  it(
    "go into the empty rows of the table, in the sheet's units, and never over a reading",
    async () => {
      const {
        readings: [first],
      } = firstExtractBatch();
      if (!first) throw new Error("no reading");
      const batch: BatchContents = { ...firstExtractBatch(), readings: [{ ...first, when: dayNumber("2026-09-05T20:00") }] };
      const sheet = await insertOn(bench, batch);
      const syncs = await tripsOf(() => Excel.run((context) => writeReadings(context, "Batch 1", rows, true)));
      expect(syncs).toBeLessThanOrEqual(3);
      await bench.calculate();
      const found = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
      const written = found && batchContents(found).readings;
      expect(written).toHaveLength(readingTableRows);
      expect(written?.[0]).toEqual(batch.readings[0]);
      expect(written?.[1]).toEqual({
        when: rows[0]?.when,
        reading: Number(rows[0]?.gravity.toFixed(4)),
        scale: "SG",
        sampleTemperature: 60,
        beerTemperature: 67.1,
      });
      expect(sheet.get("verdict")).toBe("steady");
      expect(sheet.number("fg")).toBeCloseTo(1.011, 3);
      await expect(Excel.run((context) => writeReadings(context, "Batch 1", rows, true))).rejects.toThrow("is full");
    },
    benchTimeout,
  );
  it(
    "stand by their date among those that are there, which keep their notes",
    async () => {
      const at = (day: number, reading: number) => ({
        when: 46270 + day,
        reading,
        scale: "SG" as const,
        sampleTemperature: 20,
        beerTemperature: 19,
      });
      const sheet = await insertOn(bench, { ...mashed, readings: [at(1.5, 1.044), at(4.5, 1.02), at(9.5, 1.012)] });
      const { from } = (await Excel.run((context) => readBatchSheet(context, "Mashed")))!.area("readings");
      const cell = (row: number) => address(from.row + row, from.column);
      await Excel.run(async (context) => {
        const { notes } = context.workbook.worksheets.getItem("Mashed");
        ["the first", "the second", "the third"].forEach((words, row) => notes.add(cell(row), words));
        await context.sync();
      });
      const log = [2.5, 3.5, 5.5, 11.5].map((day, index) => ({
        when: 46270 + day,
        gravity: 1.04 - index / 100,
        temperatureC: 18,
        line: index + 2,
      }));
      expect(await Excel.run((context) => writeReadings(context, "Mashed", log, true))).toBe(4);
      await bench.calculate();
      const found = batchContents((await Excel.run((context) => readBatchSheet(context, "Mashed")))!).readings;
      expect(found.map(({ when, reading }) => [when - 46270, reading])).toEqual([
        [1.5, 1.044],
        [2.5, 1.04],
        [3.5, 1.03],
        [4.5, 1.02],
        [5.5, 1.02],
        [9.5, 1.012],
        [11.5, 1.01],
      ]);
      const notes = await Excel.run(async (context) => {
        const all = found.map((_, row) =>
          context.workbook.worksheets.getItem("Mashed").notes.getItemOrNullObject(cell(row)).load("content"),
        );
        await context.sync();
        return all.map((note) => (note.isNullObject ? "" : note.content));
      });
      expect(notes).toEqual(["the first", "", "", "the second", "", "the third", ""]);
      expect(sheet.number("fg")).toBeCloseTo(1.01, 3);
    },
    benchTimeout,
  );
  it(
    "are all kept on a sheet of their own, with the fit over every one",
    async () => {
      await insertOn(bench, mashed);
      const names = await sheetNames();
      expect(await tripsOf(() => Excel.run((context) => keepLog(context, "Mashed", names, "metric", rows)))).toBeLessThanOrEqual(3);
      await bench.calculate();
      expect(at("Mashed log", "A1")).toBe("Readings of Reed Bed Bitter");
      expect([at("Mashed log", "A4"), at("Mashed log", "B4")]).toEqual(["state", "steady"]);
      expect(at("Mashed log", "B5")).toBeCloseTo(1.011, 4);
      expect([at("Mashed log", "A612"), at("Mashed log", "B612")]).toEqual([rows.at(-1)?.when, rows.at(-1)?.gravity]);
      // What is typed below looks as what was imported, and counts.
      const [formats, readings] = await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Mashed log");
        const [typed, above] = ["A613:C613", "A612:C612"].map((range) => sheet.getRange(range).load("numberFormat"));
        typed!.values = [[46290.5, 1.009, 19]];
        const log = sheet.getRange("log_gravities").load("address");
        await context.sync();
        return [[typed!.numberFormat, above!.numberFormat], log.address];
      });
      expect(formats[0]).toEqual(formats[1]);
      expect(readings).toMatch(/B642$/);
    },
    benchTimeout,
  );
});

it(
  "a batch converted to the other units shows the same beer on its sheet",
  async () => {
    const us = await insertOn(bench, firstExtractBatch());
    const metric = await insertOn(bench, { ...convertUnits(firstExtractBatch(), "metric"), sheetName: "Metric" });
    for (const name of ["og", "fg", "abv_reached", "ibu_plan"]) expect(metric.number(name), name).toBeCloseTo(us.number(name), 6);
    await Excel.run((context) => insertBatch(context, { ...mashed, sheetName: "Other" }));
  },
  benchTimeout,
);
