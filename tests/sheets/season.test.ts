import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import type { InsertionRefused } from "../../src/workbook/grid/write/insert-sheet";
import { insertSeason } from "../../src/workbook/sheets/season/insert-season";
import { plannedFirstRow } from "../../src/workbook/sheets/season/season-plan";
import { RefreshRefused, refreshSeason } from "../../src/workbook/sheets/season/refresh-season";
import { benchTimeout, openBatchBench, sheetOf, type Shown } from "../support/batch-bench";

/* One workbook, which the tests below change one after the other, as a brewer's season would. */
const sample = firstExtractBatch();
const second = exampleBatch({
  id: "second",
  sheetName: "Batch 2",
  batchName: "Two",
  brewedOn: 46300,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "extract",
});
const firstRow = plannedFirstRow;

let bench: HeadlessBench;
const run = <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => Excel.run(work);
const at = (address: string): Shown => bench.valueAt("Season", address);
const column = (letter: string, rows: number): Shown[] => Array.from({ length: rows }, (_, index) => at(`${letter}${firstRow + index}`));
const refresh = async () => {
  const before = bench.host.faults.syncCount;
  const report = await run(refreshSeason);
  await bench.calculate();
  return { ...report!, syncs: bench.host.faults.syncCount - before };
};
const onSheet = async (name: string, work: (sheet: Excel.Worksheet, sheets: Excel.WorksheetCollection) => void) => {
  await run(async (context) => {
    work(context.workbook.worksheets.getItem(name), context.workbook.worksheets);
    await context.sync();
  });
  await bench.calculate();
};

beforeAll(async () => {
  bench = await openBatchBench();
  await run((context) => insertBatch(context, sample));
  await run((context) => insertBatch(context, second));
  await run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46310, allowance: 30 }));
  await bench.calculate();
}, benchTimeout);
afterAll(() => bench.dispose());

describe("the season sheet", () => {
  it("shows of a batch what its own sheet shows, in its own units", () => {
    const batch = sheetOf(bench, sample);
    expect(at("B41")).toBe("Quillmarsh Footbridge Pale");
    for (const [letter, name] of [
      ["D", "brewed_on"],
      ["F", "og_plan"],
      ["G", "og_shown"],
      ["H", "fg_plan"],
      ["I", "fg_reached"],
      ["J", "abv_plan"],
      ["K", "abv_reached"],
      ["L", "ibu_plan"],
      ["M", "ibu_reached"],
      ["Q", "bottles_filled"],
      ["S", "cost_plan"],
      ["U", "score"],
    ] as const) {
      expect(at(`${letter}${firstRow}`), name).toBe(batch.number(name));
    }
    // NIST SP 811: 1 US gal = 3.785411784 L; EBC = 25/12.7 SRM by the definitions of both.
    expect(at("P41")).toBeCloseTo(5 * 3.785411784, 9);
    expect(at("N41")).toBeCloseTo(batch.number("colour_reached") * (25 / 12.7), 9);
    expect(column("P", 2)[1]).toBe(20);
    expect(column("E", 2)).toEqual(["ready", "planned"]);
  });

  it("adds up the year and finds the bests; planned batches are not brewed yet", () => {
    expect(at("C8")).toBeCloseTo(5 * 3.785411784, 9);
    expect(at("C9")).toBeCloseTo(30 - 5 * 3.785411784, 9);
    expect([at("C10"), at("C12")]).toEqual([1, 51]);
    // Brewed in September, the ninth month.
    expect([at("N17"), at("O17"), at("O18"), at("O19")]).toEqual([0, at("C8"), 1, sheetOf(bench, sample).number("score")]);
    expect([at("J5"), at("K5")]).toEqual([sheetOf(bench, sample).number("score"), "Quillmarsh Footbridge Pale"]);
  });

  it(
    "is written in US units as soon as that is chosen",
    async () => {
      await onSheet("Season", (sheet) => {
        sheet.getRange("C5").values = [["us"]];
      });
      expect(at("P41")).toBe(5);
      expect(at("P42")).toBeCloseTo(20 / 3.785411784, 9);
      expect(at("P40")).toBe("US gal");
      await onSheet("Season", (sheet) => {
        sheet.getRange("C5").values = [["metric"]];
      });
      expect(at("P42")).toBe(20);
    },
    benchTimeout,
  );

  it(
    "tells the state in words, by what was noted rather than by the calendar",
    async () => {
      const batch = sheetOf(bench, second);
      const [firstTime = ""] = batch.cellOf("happened").split(":");
      const state = async (values: Record<string, string | number>) => {
        await batch.set(values);
        return at("E42");
      };
      await onSheet("Season", (sheet) => {
        sheet.getRange("C4").values = [[46300]];
      });
      await onSheet("Batch 2", (sheet) => {
        sheet.getRange(firstTime).values = [[0.42]];
      });
      expect(at("E42")).toBe("brewing");
      expect(await state({ og_reading: 1.052, og_temperature: 20, volume_reached: 20 })).toBe("fermenting");
      const reading = async (line: number, when: number, gravity: number) => {
        const row = Number(batch.cellOf("readings").slice(1)) + line;
        await onSheet("Batch 2", (sheet) => {
          sheet.getRange(`A${row}:D${row}`).values = [[when, gravity, "SG", 20]];
        });
        return at("E42");
      };
      expect(await reading(0, 46303, 1.03)).toBe("fermenting");
      // Slow, but far from its end.
      expect(await reading(1, 46304, 1.0285)).toBe("fermenting");
      expect(await reading(2, 46305, 1.0285)).toBe("stalled");
      expect(await reading(3, 46309, 1.0135)).toBe("fermenting");
      expect(await reading(4, 46310, 1.012)).toBe("almost there");
      expect(await reading(5, 46311.5, 1.012)).toBe("finished");
      expect(await state({ packaged_on: 46312, bottles_filled: 38 })).toBe("conditioning");
      await onSheet("Season", (sheet) => {
        sheet.getRange("C4").values = [[46340]];
      });
      expect(at("E42")).toBe("ready");
      await onSheet("Season", (sheet) => {
        sheet.getRange("V42").values = [[0]];
      });
      expect(at("E42")).toBe("drunk up");
    },
    benchTimeout,
  );
});

describe("bringing it up to date", () => {
  it(
    "notes the figures that there are now, and then writes nothing when nothing changed, in three round trips",
    async () => {
      expect(await refresh()).toMatchObject({ written: 0, noted: 2, batches: 2, syncs: 4 });
      expect(await refresh()).toMatchObject({ written: 0, noted: 0, batches: 2, syncs: 3 });
    },
    benchTimeout,
  );

  it(
    "adds a row for a new batch and for a copy made by Excel, and names the copy",
    async () => {
      await run((context) => insertBatch(context, { ...second, id: "third", sheetName: "Batch 3", batchName: "Three" }));
      await onSheet("Batch 2", (sheet) => {
        sheet.copy("End");
      });
      expect(await refresh()).toMatchObject({
        added: ["Batch 3", "Batch 2 (2)"],
        written: 2,
        syncs: 4,
        copies: [["Batch 2", "Batch 2 (2)"]],
      });
      expect(column("B", 5)).toEqual(["Quillmarsh Footbridge Pale", "Two", "Three", "Two", null]);
      expect(await refresh()).toMatchObject({ written: 0 });
    },
    benchTimeout,
  );

  it(
    "follows names by itself, and the order of the tabs; what was typed goes along",
    async () => {
      await onSheet("Season", (sheet) => {
        sheet.getRange("W41:W44").values = [["footbridge"], ["two"], ["three"], [""]];
        sheet.getRange("BC41:BD44").formulas = [1, 2, 3, 4].map((index) => [`=P${firstRow + index - 1}*100`, `own ${index}`]);
      });
      await onSheet("Batch 3", (sheet) => {
        sheet.name = "It's third";
        sheet.position = 0;
      });
      expect(column("B", 4)).toEqual(["Quillmarsh Footbridge Pale", "Two", "Three", "Two"]);
      await refresh();
      expect(column("B", 4)).toEqual(["Three", "Quillmarsh Footbridge Pale", "Two", "Two"]);
      expect(column("W", 4)).toEqual(["three", "footbridge", "two", null]);
      expect(column("BD", 4)).toEqual(["own 3", "own 1", "own 2", "own 4"]);
      expect(column("BC", 4)).toEqual(column("P", 4).map((litres) => Number(litres) * 100));
      expect(column("V", 4)).toEqual([null, null, 0, null]);
      expect(column("X", 1)).toEqual(["It's third"]);
    },
    benchTimeout,
  );

  it(
    "refuses, in words, to write over something of the brewer's, and changes nothing",
    async () => {
      await onSheet("Season", (sheet) => {
        sheet.getRange("C45").values = [["my note"]];
      });
      await run((context) => insertBatch(context, { ...second, id: "fourth", sheetName: "Batch 4", batchName: "Four" }));
      const refusal = await run(refreshSeason).catch((problem: unknown) => problem);
      expect(refusal).toBeInstanceOf(RefreshRefused);
      expect((refusal as Error).message).toContain("C45 holds something");
      expect(column("C", 5)[4]).toBe("my note");
      await onSheet("Season", (sheet) => {
        sheet.getRange("C45").clear("Contents");
      });
    },
    benchTimeout,
  );

  it(
    "keeps a batch that was brewed when its sheet is deleted, until its name is emptied; one that was only planned goes",
    async () => {
      await refresh();
      await refresh();
      expect(column("B", 6)).toEqual(["Three", "Quillmarsh Footbridge Pale", "Two", "Two", "Four", null]);
      const before = ["A", "C", "D", "F", "G", "I", "K", "M", "N", "P", "Q", "S", "T", "U"].map((letter) => at(`${letter}43`));
      await onSheet("Batch 2", (sheet) => {
        sheet.delete();
      });
      await onSheet("Batch 4", (sheet) => {
        sheet.delete();
      });
      // Before anybody has looked, too.
      const figuresAt = (row: number) =>
        ["A", "C", "D", "F", "G", "I", "K", "M", "N", "P", "Q", "S", "T", "U"].map((letter) => at(`${letter}${row}`));
      expect([at("B43"), at("E43"), at("E45")]).toEqual(["Two", "sheet deleted", "planned"]);
      expect(figuresAt(43)).toEqual(before);
      expect(await refresh()).toMatchObject({ kept: ["Batch 2"], dropped: ["Batch 4"], batches: 3 });
      expect(column("B", 5)).toEqual(["Three", "Quillmarsh Footbridge Pale", "Two", "Two", null]);
      expect(column("E", 4)[3]).toBe("sheet deleted");
      expect(figuresAt(44)).toEqual(before);
      expect(column("W", 5)).toEqual(["three", "footbridge", null, "two", null]);
      expect(await refresh()).toMatchObject({ written: 0, noted: 0, kept: [], dropped: [] });
      await onSheet("Season", (sheet) => {
        sheet.getRange("V44:W44").clear("Contents");
        sheet.getRange("BC44:BD44").clear("Contents");
      });
      await refresh();
      expect(column("B", 4)[3]).toBe("Two");
      await onSheet("Season", (sheet) => {
        sheet.getRange("B44").clear("Contents");
      });
      expect(await refresh()).toMatchObject({ dropped: ["Batch 2"] });
      expect(column("B", 5)).toEqual(["Three", "Quillmarsh Footbridge Pale", "Two", null, null]);
    },
    benchTimeout,
  );
});

describe("inserting a season sheet", () => {
  it(
    "is refused where there is one, and where the name is the brewer's",
    async () => {
      await expect(run((context) => insertSeason(context, { sheetName: "Another", units: "us" }))).rejects.toThrow(
        'This workbook has a season sheet already: "Season".',
      );
      const other = await openBatchBench();
      const refusal = await run((context) => insertSeason(context, { sheetName: "SHEET1", units: "us" })).catch(
        (problem: unknown) => problem,
      );
      expect((refusal as InsertionRefused).freeName).toBe("SHEET1 (2)");
      expect(await run(refreshSeason)).toBeUndefined();
      other.dispose();
    },
    benchTimeout,
  );
});
