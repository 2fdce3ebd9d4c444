import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { checkWorkbook, reports, type CheckReport } from "../../src/workbook/care/check/check-workbook";
import type { Finding } from "../../src/workbook/care/check/finding";
import { repairFormulas } from "../../src/workbook/care/check/repair";
import { address } from "../../src/workbook/grid/plan/addresses";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { NamedCells, type CellValue } from "../../src/workbook/grid/read/named-cells";
import type { Progress } from "../../src/workbook/grid/write/progress";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";

const today = 46400;
const choices = {
  id: "m1",
  sheetName: "Mashed",
  batchName: "Mashed",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
} as const;

let bench: HeadlessBench;
beforeEach(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterEach(() => bench.dispose());

const check = (): Promise<CheckReport> => Excel.run((context) => checkWorkbook(context, {}, today));
const all = async (): Promise<Finding[]> => (await check()).sheets.flatMap(({ findings }) => findings);

async function write(sheet: string, cells: Readonly<Record<string, string | number>>): Promise<void> {
  await Excel.run(async (context) => {
    for (const [address, content] of Object.entries(cells))
      context.workbook.worksheets.getItem(sheet).getRange(address).formulas = [[content]];
    await context.sync();
  });
  await bench.calculate();
}

describe("checking sound workbooks", () => {
  it(
    "finds nothing on the sample batch, and on fresh sheets only what is still to fill in",
    async () => {
      await insertOn(bench, firstExtractBatch());
      await insertOn(bench, exampleBatch(choices));
      await insertOn(bench, exampleBatch({ ...choices, id: "m2", sheetName: "US", units: "us", volume: 5, method: "extract", topUp: 2.5 }));
      await insertOn(bench, newBatch({ ...choices, id: "m3", sheetName: "Blank", method: "extract" }));
      const report = await check();
      expect(report).toMatchObject({ checked: 5, total: 5, wasStopped: false, passedOver: [] });
      expect(report.sheets.flatMap(({ findings }) => findings.map(({ sheet, weight, words }) => [sheet, weight, words]))).toEqual([
        ["Blank", "fill", expect.stringContaining("No malt or sugar yet")],
      ]);
    },
    benchTimeout,
  );
});

/** What is typed into a sound sheet, and the words that must come of it, at that cell. */
type Slip = readonly [
  what: string,
  slips: Readonly<Record<string, string | number>>,
  weight: Finding["weight"],
  words: RegExp,
  at?: string,
];

const slips: readonly Slip[] = [
  ["alpha acid of 55", { hop_alpha: 55 }, "look", /alpha acid of 55 %\? No hop/],
  ["alpha acid as a share of one", { hop_alpha: 0.055 }, "look", /Type it as on the packet: 5\.5/],
  ["Plato under SG", { og_reading: 12.6 }, "look", /looks like degrees Plato/],
  ["SG under Plato", { og_scale: "P" }, "look", /set the scale to SG/, "og_reading"],
  ["a gravity without its point", { og_reading: 1051 }, "look", /Write 1\.051/],
  ["units changed by hand", { units: "metric" }, "stop", /made in US gal/],
  ["°C on a °F sheet", { pitch_temperature: 19 }, "look", /looks like °C/],
  ["mL on a fl oz sheet", { bottle_volume: 330 }, "look", /looks like mL/],
  ["a text for a number", { kettle_loss: "0.2 gal" }, "look", /text “0\.2 gal” where a number belongs/],
  ["attenuation as a share", { attenuation: 0.75 }, "look", /Type 75 for 75 %/],
  ["a formula overwritten", { fg_plan: 1.011 }, "look", /fg_plan\) should calculate, but 1\.011 was typed over/],
  ["a formula deleted", { kettle_part: "" }, "look", /its formula was deleted/],
  ["gravity that rises", { readings: 1.005 }, "look", /Gravity rose .* from 1\.006 to 1\.019/, ""],
  ["packaged too early", { packaged_on: 46273 }, "stop", /Packaged before two readings a day apart agreed/],
  ["packaged before brewed", { packaged_on: 46200 }, "stop", /before it was brewed/],
  ["tasted before packaged", { tasted_on: 46271 }, "look", /before it was packaged/],
  ["readings out of order", { reading_times: 46279.5 }, "look", /the line above is later/, ""],
  ["a reading of tomorrow's month", { reading_times: 46500 }, "look", /still to come/],
  ["a reading before the brew day", { reading_times: 46200 }, "look", /before the brew day/],
  ["a date as text", { reading_times: "8.9." }, "look", /date of a reading is a text/],
  ["a score of 7", { scores: 7 }, "look", /Score 7\? It may be from 1 to 5/],
  ["a yield above all", { malt: 6, attenuation: 110 }, "look", /More than all of it cannot be/, "attenuation"],
  ["no volume", { volume: "" }, "fill", /How much beer/],
  ["a hop without its alpha acid", { hop_alpha: "" }, "fill", /no alpha acid yet/],
  ["a reading without its day", { reading_times: "" }, "fill", /no day and time yet/],
  ["the sheet's own check", { packs_in_hand: 0.5 }, "look", /Too little yeast/, ""],
  ["glass that cannot take it", { carbonation: 5 }, "stop", /Pressure in the bottle/, ""],
];

/** A sheet as if something else stood in some cells; nothing is calculated anew. */
function patched(sheet: NamedCells, cells: Readonly<Record<string, string | number>>): NamedCells {
  const block = (read: (row: number, column: number) => CellValue) =>
    Array.from({ length: 260 }, (_, row) =>
      Array.from({ length: 40 }, (_2, column) => cells[address(row + 1, column + 1)] ?? read(row + 1, column + 1)),
    );
  const ranges = new Map(sheet.names().map((name) => [name, sheet.range(name)]));
  return new NamedCells(
    sheet.sheetName,
    ranges,
    { row: 1, column: 1 },
    block((row, column) => sheet.at(row, column)),
    block((row, column) => sheet.formulaAt(row, column)),
  );
}

describe("each slip of the hand is found where it is", () => {
  it(
    "all of them, and nothing is found without a slip",
    async () => {
      const batch = await insertOn(bench, firstExtractBatch());
      const sheet: NamedCells | undefined = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
      if (!sheet) throw new Error("the batch is not there");
      expect(reports([patched(sheet, {})], new Map(), today)).toEqual([]);
      const cellsOf = (values: Readonly<Record<string, string | number>>) =>
        Object.fromEntries(Object.entries(values).map(([name, value]) => [batch.cellOf(name), value]));
      for (const [what, values, weight, words, at] of slips) {
        // Some are found in what the sheet calculates from the slip, so those are really typed.
        if (at === "") await batch.set(values);
        const findings =
          at === "" ? await all() : reports([patched(sheet, cellsOf(values))], new Map(), today).flatMap((report) => report.findings);
        const found = findings.find((finding) => words.test(finding.words));
        expect(found, `${what}: ${JSON.stringify(findings.map((finding) => finding.words))}`).toBeDefined();
        expect(found?.weight, what).toBe(weight);
        if (at === "") await batch.set(Object.fromEntries(Object.keys(values).map((name) => [name, sheet.value(name) as string | number])));
        else expect(found?.address, what).toBe(batch.cellOf(at ?? Object.keys(values)[0] ?? ""));
      }
      expect(await all()).toEqual([]);
    },
    benchTimeout,
  );
});

describe("formulas", () => {
  it(
    "left at #NAME? are found, repaired, and told from those that cannot be",
    async () => {
      await write("Sheet1", {
        A1: "=_xldudf_GYLE_BEER_ABV(1.05,1.01)",
        A2: "=GYLE.BEER.ABC(1,2)",
        A3: "=GYLE.BEER.ABV(nowhere,1)",
        A4: "=GYLE.BEER.ABV(12.4,1.01)",
        A5: "=GYLE.BEER.EBC(A4)",
        A6: "=1/0",
        A7: "=GYLE.BEER.ABV(1.05,1.01)",
      });
      const findings = await all();
      expect(findings.map(({ address, words, repair }) => [address, words, repair?.formula])).toEqual([
        ["A1", expect.stringContaining("left this GYLE formula at #NAME?"), "=GYLE.BEER.ABV(1.05,1.01)"],
        ["A2", expect.stringContaining("Did you mean GYLE.BEER.ABV?"), undefined],
        ["A3", expect.stringContaining("no name nowhere"), undefined],
        ["A4", expect.stringContaining("looks like °P"), undefined],
      ]);
      const report = await Excel.run((context) =>
        repairFormulas(
          context,
          findings.flatMap(({ repair }) => repair ?? []),
        ),
      );
      expect(report).toEqual({ written: 1, still: [] });
      expect(bench.valueAt("Sheet1", "A1")).toBeCloseTo(5.3, 1);
    },
    benchTimeout,
  );

  it(
    "that were overwritten come back as planned, also where rows were put in above",
    async () => {
      const contents: BatchContents = firstExtractBatch();
      const batch = await insertOn(bench, contents);
      const spill = planBatch(contents).cells.find(({ content }) => String(content).startsWith("=GYLE.WORT.HYDROMETER(B"));
      const before = [batch.get("fg_plan"), bench.valueAt("Batch 1", spill?.address ?? "")];
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").getRange("4:5").insert("Down");
        await context.sync();
      });
      const down = (address: string): string => address.replace(/\d+/, (row) => String(Number(row) + 2));
      expect(await all()).toEqual([]);
      await write("Batch 1", { [down(batch.cellOf("fg_plan"))]: 1.02, [down(spill?.address ?? "")]: 1.5 });
      const repairs = (await all()).flatMap(({ repair }) => repair ?? []);
      expect(repairs.map(({ address, kind }) => [address, kind])).toEqual([
        [down(batch.cellOf("fg_plan")), "overwritten"],
        [down(spill?.address ?? ""), "overwritten"],
      ]);
      await Excel.run((context) => repairFormulas(context, repairs));
      expect(bench.valueAt("Batch 1", down(batch.cellOf("fg_plan")))).toBeCloseTo(Number(before[0]), 9);
      expect(bench.valueAt("Batch 1", down(spill?.address ?? ""))).toBeCloseTo(Number(before[1]), 9);
      expect(await all()).toEqual([]);
    },
    benchTimeout,
  );

  it(
    "names that were deleted are named",
    async () => {
      const batch = await insertOn(bench, firstExtractBatch());
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem(batch.sheetName);
        sheet.names.getItem("attenuation").delete();
        await context.sync();
      });
      expect((await all()).map(({ words }) => words)).toContainEqual(expect.stringContaining("were deleted: attenuation"));
    },
    benchTimeout,
  );
});

describe("repair is all or nothing", () => {
  const cells = { A1: "=_xldudf_GYLE_BEER_ABV(1.05,1.01)", A2: "=_xldudf_GYLE_BEER_ABV(1.06,1.01)" };
  const present = () =>
    Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Sheet1").getRange("A1:A2").load("formulas");
      await context.sync();
      return range.formulas.flat() as unknown[];
    });
  const repairs = async () => (await all()).flatMap(({ repair }) => repair ?? []);
  const repair = async (wanted: Awaited<ReturnType<typeof repairs>>) => Excel.run((context) => repairFormulas(context, wanted));

  it(
    "says that it was done where only the last look failed",
    async () => {
      await write("Sheet1", cells);
      const wanted = await repairs();
      bench.host.faults.failAtSync(4, new Error("the host is busy"));
      expect(await repair(wanted)).toEqual({ written: 2, still: undefined });
      expect(await present()).toEqual(wanted.map(({ formula }) => formula));
    },
    benchTimeout,
  );

  it(
    "refuses what was changed, protected or deleted meanwhile",
    async () => {
      await write("Sheet1", cells);
      const wanted = await repairs();
      expect(wanted).toHaveLength(2);
      await write("Sheet1", { A2: 5 });
      await expect(repair(wanted)).rejects.toThrow(/A2 on “Sheet1” was changed since the check/);
      expect(await present()).toEqual([cells.A1, 5]);
      await write("Sheet1", { A2: cells.A2 });
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Sheet1").protection.protect();
        await context.sync();
      });
      await expect(repair(wanted)).rejects.toThrow(/“Sheet1” is protected/);
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Sheet1").protection.unprotect();
        await context.sync();
      });
      const notEditing = bench.host.cellEditing;
      bench.host.cellEditing = { active: () => true, ended: () => Promise.resolve() };
      await expect(repair(wanted)).rejects.toMatchObject({ code: "InvalidOperationInCellEditMode" });
      bench.host.cellEditing = notEditing;
      await expect(repair(wanted.map((one) => ({ ...one, sheet: "Gone" })))).rejects.toThrow(/no sheet “Gone”/);
      expect(await present()).toEqual(Object.values(cells));
    },
    benchTimeout,
  );
});

describe("a season", () => {
  it(
    "finds batches with the same mark, tells its progress and can be stopped without harm",
    async () => {
      await insertOn(bench, newBatch({ ...choices, sheetName: "One" }));
      await insertOn(bench, newBatch({ ...choices, sheetName: "Two" }));
      const told: Progress[] = [];
      const syncs = bench.host.faults.syncCount;
      const whole = await Excel.run((context) => checkWorkbook(context, { onProgress: (progress) => told.push(progress) }, today));
      expect(bench.host.faults.syncCount - syncs).toBe(3);
      expect(told.at(-1)).toEqual({ done: 3, total: 3, unit: "sheet" });
      expect(whole.sheets.map(({ findings }) => findings[0]?.words)).toEqual([
        expect.stringContaining("same mark as “Two”"),
        expect.stringContaining("same mark as “One”"),
      ]);
      const stopped = await Excel.run((context) => checkWorkbook(context, { signal: AbortSignal.abort() }, today));
      expect(stopped).toMatchObject({ checked: 0, total: 3, wasStopped: true, sheets: [] });
    },
    benchTimeout,
  );
});
