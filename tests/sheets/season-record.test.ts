import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { benchBatch } from "../../src/build/bench/bench-batch";
import { multipliedSeason } from "../../src/build/bench/multiplied-season";
import { collectComputed } from "../../src/excel-stand-in/computed";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { openWorkbook, saveWorkbook } from "../../src/excel-stand-in/xlsx";
import { registry } from "../../src/functions/registry";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { columnLetters, columnNumber } from "../../src/workbook/grid/plan/addresses";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { insertSeason, renewSeason } from "../../src/workbook/sheets/season/insert-season";
import { OlderSeason, refreshSeason, type YearChange } from "../../src/workbook/sheets/season/refresh-season";
import { firstOwnColumn } from "../../src/workbook/sheets/season/season-columns";
import { plannedFirstRow } from "../../src/workbook/sheets/season/season-plan";
import { benchTimeout, openBatchBench } from "../support/batch-bench";
import { openFile } from "../support/open-file";

const run = <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => Excel.run(work);

/*
 * A season of thirty batches, of which the sheets of a third are deleted. The truth is a list of what the test typed into the sheets,
 * added up here: what was brewed in a year does not grow less because a sheet is gone.
 */
interface Brewed {
  readonly number: number;
  readonly day: number;
  readonly litres: number;
  readonly cost: number;
  readonly bottles: number | "";
  readonly planned: boolean;
}
const batches: readonly Brewed[] = Array.from({ length: 30 }, (_, index) => ({
  number: index + 1,
  day: dayNumber(index < 12 ? "2025-03-01" : "2026-02-01") + index * 7,
  litres: 15 + ((index * 7) % 11) / 2,
  cost: 20 + index,
  bottles: index % 3 === 0 ? "" : 20 + index,
  planned: index % 6 === 5,
}));
const year = (wanted: number, of: readonly Brewed[] = batches) =>
  of.filter(({ day, planned }) => !planned && day >= dayNumber(`${wanted}-01-01`) && day < dayNumber(`${wanted + 1}-01-01`));
const sum = (of: readonly Brewed[], what: "litres" | "cost") => of.reduce((all, one) => all + one[what], 0);
const bottlingLoss = 0.5;

describe("a season of thirty batches with deletions", () => {
  let bench: HeadlessBench;
  const names = new Map(planBatch(benchBatch(1)).names.map(({ name, range }) => [name, range.split(":")[0]!]));
  const season = (address: string) => bench.valueAt("Season", address);
  const refresh = async (change?: YearChange) => {
    const report = (await run((context) => refreshSeason(context, change)))!;
    await bench.calculate();
    return report;
  };
  const remove = async (numbers: readonly number[]) => {
    await run(async (context) => {
      for (const number of numbers) context.workbook.worksheets.getItem(`Batch ${number}`).delete();
      await context.sync();
    });
    await bench.calculate();
  };
  const lookAt = async (wanted: number) => {
    await run(async (context) => {
      context.workbook.worksheets.getItem("Season").getRange("C6").values = [[wanted]];
      await context.sync();
    });
    await bench.calculate();
  };
  /** Brewed, left of the allowance, batches, spent; and the same year in the table year by year. */
  const shown = () => [season("C8"), season("C9"), season("C10"), season("C11"), season("C17"), season("D17"), season("E17")];
  const truth = (wanted: number) => {
    const [litres, cost, count] = [sum(year(wanted), "litres"), sum(year(wanted), "cost"), year(wanted).length];
    return [litres, 200 - litres, count, cost, litres, count, cost];
  };
  const expectYear = async (wanted: number) => {
    await lookAt(wanted);
    const [is, should] = [shown(), truth(wanted)];
    should.forEach((figure, index) => expect(Number(is[index]), `figure ${index} of ${wanted}`).toBeCloseTo(figure, 8));
  };
  const months = () =>
    ["G", "H", "I", "J", "K", "L", "M", "N", "O", "P", "Q", "R"].reduce((all, letter) => all + Number(season(`${letter}17`)), 0);
  const deleted = batches.filter(({ number }) => number % 3 === 1).map(({ number }) => number);

  beforeAll(async () => {
    bench = await openBatchBench();
    await run((context) => insertBatch(context, benchBatch(1)));
    await bench.calculate();
    await bench.load(multipliedSeason(bench.snapshot(), batches.length));
    await run(async (context) => {
      for (const { number, day, litres, cost, bottles, planned } of batches) {
        const sheet = context.workbook.worksheets.getItem(`Batch ${number}`);
        const put = (name: string, value: string | number) => {
          sheet.getRange(names.get(name)!).values = [[value]];
        };
        put("batch_number", number);
        put("brewed_on", day);
        for (const table of ["malt_cost", "hop_cost"]) {
          const range = planBatch(benchBatch(1)).names.find(({ name }) => name === table)!.range;
          sheet.getRange(range).clear("Contents");
        }
        put("yeast_cost", cost);
        put("bottling_loss", bottlingLoss);
        if (planned) continue;
        put("og_reading", 1.05);
        put("volume_reached", litres);
        put("packaged_on", day + 14);
        if (bottles === "") put("into", "keg");
        else put("bottles_filled", bottles);
      }
      await context.sync();
    });
    await run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: dayNumber("2026-12-01"), allowance: 200 }));
    await bench.calculate();
    await refresh();
  }, benchTimeout * 2);
  afterAll(() => bench.dispose());

  it("adds up what the sheets say, kegs too", async () => {
    await expectYear(2025);
    await expectYear(2026);
    expect(months()).toBeCloseTo(sum(year(2026), "litres"), 8);
    const kegs = batches.filter(({ planned, bottles }) => !planned && bottles === "");
    expect(season("C13")).toBeCloseTo(
      kegs.reduce((all, { litres }) => all + litres - bottlingLoss, 0),
      8,
    );
    const bottled = batches.filter(({ planned }) => !planned).reduce((all, { bottles }) => all + (bottles || 0), 0);
    expect(season("C12")).toBe(bottled);
  });

  it("names no plan among the bests: a planned batch is darker, stronger and cheaper, and has no part in them", async () => {
    const planned = batches.find((one) => one.planned)!;
    const cells: [string, number][] = [["yeast_cost", 0.01]];
    const colours = planBatch(benchBatch(1))
      .names.find(({ name }) => name === "malt")!
      .range.split(":")[1]!;
    await run(async (context) => {
      const sheet = context.workbook.worksheets.getItem(`Batch ${planned.number}`);
      for (const [name, value] of cells) sheet.getRange(names.get(name)!).values = [[value]];
      const first = Number(/\d+/.exec(names.get("malt")!)![0]);
      sheet.getRange(`${colours.replace(/\d+/, "")}${first}`).values = [[1500]];
      await context.sync();
    });
    await bench.calculate();
    const row = plannedFirstRow + planned.number - 1;
    // Highest score, strongest, most bitter, darkest, palest, cheapest, most bottles, most in kegs.
    const bests = [5, 6, 7, 8, 9, 10, 11, 12].map((line) => season(`K${line}`));
    expect(bests).not.toContain(`Number ${planned.number}`);
    expect(Number(season(`N${row}`))).toBeGreaterThan(2 * Number(season("J8")));
    expect(Number(season("J10"))).toBeGreaterThan(0.5);
    const brewed = batches.filter((one) => !one.planned);
    const most = (what: (one: Brewed) => number) => brewed.reduce((best, one) => (what(one) > what(best) ? one : best)).number;
    expect(bests.slice(6)).toEqual([
      `Number ${most(({ bottles }) => bottles || 0)}`,
      `Number ${most(({ bottles, litres }) => (bottles === "" ? litres : 0))}`,
    ]);
  });

  it("keeps the year's volume, cost, count and months when sheets are deleted, at once and after the list was brought up to date", async () => {
    await lookAt(2026);
    const [before, monthsBefore, ready] = [shown(), months(), [season("C12"), season("C13")]];
    await remove(deleted);
    expect(shown()).toEqual(before);
    const report = await refresh();
    expect(report.kept).toHaveLength(deleted.filter((number) => !batches[number - 1]!.planned).length);
    expect(report.batches).toBe(20);
    await expectYear(2025);
    await expectYear(2026);
    expect(months()).toBe(monthsBefore);
    expect(await refresh()).toMatchObject({ written: 0, noted: 0 });
    // What stands in the cellar is no longer known of those.
    expect(ready.map(Number).every((one) => one > 0)).toBe(true);
  });

  it("in US gallons they are the same beers", async () => {
    const units = (wanted: string) =>
      run(async (context) => {
        context.workbook.worksheets.getItem("Season").getRange("C5").values = [[wanted]];
        await context.sync();
      });
    await units("us");
    await bench.calculate();
    await refresh();
    // NIST SP 811: 1 US gal = 3.785411784 L.
    expect(Number(season("C8"))).toBeCloseTo(sum(year(2026), "litres") / 3.785411784, 8);
    await units("metric");
    await bench.calculate();
    await refresh();
    await expectYear(2026);
  });

  it("a closed year does not follow its sheets any more, until it is opened again", async () => {
    const there = year(2025).find(({ number }) => !deleted.includes(number))!;
    const volume = (litres: number) =>
      run(async (context) => {
        context.workbook.worksheets.getItem(`Batch ${there.number}`).getRange(names.get("volume_reached")!).values = [[litres]];
        await context.sync();
      });
    const report = await refresh({ year: 2025, isClosed: true });
    expect(report.years).toEqual([
      { year: 2026, batches: year(2026).length, closed: 0 },
      { year: 2025, batches: year(2025).length, closed: year(2025).length },
    ]);
    await volume(99);
    await bench.calculate();
    await refresh();
    await expectYear(2025);
    expect([season("B17"), season("F17")]).toEqual([2025, "yes"]);
    await remove([there.number]);
    await refresh();
    await expectYear(2025);
    await refresh({ year: 2025, isClosed: false });
    await expectYear(2025);
    expect(season("F17") ?? "").toBe("");
  });

  it("survives a file", async () => {
    const snapshot = bench.snapshot();
    const bytes = await saveWorkbook(snapshot, collectComputed(bench.engine, snapshot));
    const opened = await openWorkbook(bytes, { functionNames: registry.map(({ id }) => id), id: "again" });
    await bench.load(opened.snapshot);
    await bench.calculate();
    await expectYear(2026);
    expect(await refresh()).toMatchObject({ written: 0, noted: 0 });
    await expectYear(2025);
  });
});

describe("a season sheet of the first plan", () => {
  let bench: HeadlessBench;
  beforeAll(async () => {
    bench = await openBatchBench();
    await openFile(bench, new URL("../samples/old/season-plan-2.xlsx", import.meta.url));
    await bench.calculate();
  }, benchTimeout);
  afterAll(() => bench.dispose());

  it(
    "is left as it is until it is written anew, with what was typed into it",
    async () => {
      const typed = () =>
        Array.from({ length: 12 }, (_, index) => ["U", "V"].map((letter) => bench.valueAt("Season", `${letter}${25 + index}`)));
      const before = typed();
      // Two columns of the brewer's own, the second made from the first.
      await run(async (context) => {
        context.workbook.worksheets.getItem("Season").getRange("AA26:AB26").formulas = [["=2*R26", "=AA26+1"]];
        await context.sync();
      });
      await bench.calculate();
      const [twice, more] = ["AA26", "AB26"].map((place) => bench.valueAt("Season", place));
      expect(twice).toBeGreaterThan(0);
      await expect(run(refreshSeason)).rejects.toBeInstanceOf(OlderSeason);
      const sheetName = await run(renewSeason);
      await bench.calculate();
      expect(typed()).toEqual(before);
      const now = Array.from({ length: 12 }, (_, index) =>
        ["V", "W"].map((letter) => bench.valueAt(sheetName, `${letter}${plannedFirstRow + index}`)),
      );
      expect(now).toEqual(before);
      const own = [firstOwnColumn, columnLetters(columnNumber(firstOwnColumn) + 1)];
      expect(own.map((letters) => bench.valueAt(sheetName, `${letters}${plannedFirstRow + 1}`))).toEqual([twice, more]);
      expect(bench.valueAt(sheetName, "C7")).toBe(bench.valueAt("Season", "C7"));
      expect(await run(refreshSeason)).toMatchObject({ sheetName, batches: 12, added: [] });
    },
    benchTimeout,
  );
});
