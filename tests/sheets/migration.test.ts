import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { ChartRecord } from "../../src/excel-stand-in/excel/sheet-extras";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planVersion } from "../../src/workbook/batch/describe/plan-version";
import { migrateSheets, readOutlook } from "../../src/workbook/care/migrate";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { moved, placeMap } from "../../src/workbook/care/check/place-map";
import { isOurs } from "../../src/workbook/care/migrate/our-words";
import { standing } from "../../src/workbook/batch/read/standing";
import { newNames } from "../../src/workbook/care/migrate/new-names";
import { position } from "../../src/workbook/grid/plan/addresses";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { plugIn, unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";
import type { NamedCells } from "../../src/workbook/grid/read/named-cells";
import { openFile } from "../support/open-file";

/** The sample workbook as the first Gylebook made it, kept as it was. */
const oldSample = new URL("../samples/old/first-extract-batch-plan-1.xlsx", import.meta.url);
const samplesOf = (plan: number) => ({
  batch: new URL(`../samples/old/first-extract-batch-plan-${plan}.xlsx`, import.meta.url),
  season: new URL(`../samples/old/season-plan-${plan}.xlsx`, import.meta.url),
});
const secondPlan = samplesOf(2).batch;
/** What those workbooks hold where today's sample has another recipe. */
const recipeOfThen = {
  malt: [
    { ingredient: "Crystal malt, medium", mass: 0.75, yieldPercent: 74, handling: "steep", colour: 60, cost: 1.9 },
    { ingredient: "Pale malt extract, liquid", mass: 6, yieldPercent: 78, handling: "extract", colour: 4, cost: 16.5 },
    { ingredient: "Pale malt extract, dry", mass: 1, yieldPercent: 91, handling: "extract", colour: 4, cost: 5.2 },
  ],
  hops: [
    { hop: "Northern Brewer", mass: 0.9, alphaPercent: 8.5, minutes: 60, form: "pellets", cost: 2.4 },
    { hop: "Cascade", mass: 1, alphaPercent: 5.5, minutes: 15, form: "pellets", cost: 2.1 },
    { hop: "Cascade", mass: 1, alphaPercent: 5.5, minutes: 5, form: "pellets", cost: 2.1 },
  ],
  yeast: { ...firstExtractBatch().yeast, name: "Clean ale yeast, dry, 11 g", cellsPerPack: 110, cost: 4.5 },
  tasting: {
    ...firstExtractBatch().tasting,
    looks: { score: 4, words: "Copper, a little hazy, white foam that stays" },
    smells: { score: 4, words: "Grapefruit and biscuit" },
  },
} as const;

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());
const openOldSample = () => openFile(bench, oldSample);

const migrate = (only?: string[]) => Excel.run((context) => migrateSheets(context, only));

/** What stands in every cell, without looks: formulas or constants, and results. */
function contentOf(): Record<string, unknown> {
  const cells: Record<string, unknown> = {};
  for (const sheet of Object.values(bench.snapshot().sheets)) {
    for (const [row, columns] of Object.entries(sheet.cellData ?? {})) {
      for (const [column, cell] of Object.entries(columns as Record<string, { f?: string | null; v?: unknown } | null>)) {
        const content = [cell?.f ?? null, cell?.v ?? null];
        if (content.some((one) => one !== null && one !== "")) cells[`${sheet.name} ${row},${column}`] = content;
      }
    }
  }
  return cells;
}

const charts = (sheetName: string): ChartRecord[] => {
  const sheet = Object.values(bench.snapshot().sheets).find(({ name }) => name === sheetName);
  return structuredClone(bench.host.extras.ofSheet(bench.host.unitId, sheet?.id ?? "").charts ?? []);
};
const whole = () => ({ cells: contentOf(), charts: charts("Batch 1") });

/** The bench reads times from a file to the millisecond. */
const rounded = (contents: object): unknown =>
  JSON.parse(JSON.stringify(contents), (_key, value: unknown) => (typeof value === "number" ? Math.round(value * 1e5) / 1e5 : value));

const change = (work: (sheet: Excel.Worksheet) => void) =>
  Excel.run(async (context) => {
    work(context.workbook.worksheets.getItem("Batch 1"));
    await context.sync();
  });

/** Every cell of today's plan in which the sheet has something else, but for those of the chart's figures. */
async function differences(sheetName: string): Promise<string[]> {
  const sheet = (await Excel.run((context) => readBatchSheet(context, sheetName)))!;
  const plan = planBatch(batchContents(sheet), standing(sheet));
  const place = placeMap(plan, sheet);
  return plan.cells.flatMap(({ address, content, style }) => {
    if (typeof content !== "string" || content === "" || style.startsWith("input")) return [];
    const where = place(address);
    if (where === undefined) return [`${address} has no place`];
    const { row, column } = position(where);
    const wanted = moved(content, place);
    return sheet.formulaAt(row, column) === wanted
      ? []
      : [`${where}: ${String(sheet.formulaAt(row, column)).slice(0, 80)} for ${String(wanted).slice(0, 80)}`];
  });
}

/** What was typed, without the mark, the steps (ours give way), and what the migration notes of a day that is over. */
async function typedInto(sheetName: string) {
  const { wort, steps: _steps, ...contents } = batchContents((await Excel.run((context) => readBatchSheet(context, sheetName)))!);
  const { collected: _, ...measured } = wort;
  return rounded({ ...contents, id: "", wort: measured });
}

describe.each([2, 3])("a sheet of plan %i", (plan) => {
  const { batch, season } = samplesOf(plan);

  it(
    "follows today's plan in every word and formula afterwards, and what was typed is as it was",
    async () => {
      await openFile(bench, batch);
      const typed = await typedInto("Batch 1");
      const { migrated, left } = await migrate();
      await bench.calculate();
      expect(left).toEqual([]);
      expect(migrated).toMatchObject([{ sheetName: "Batch 1", from: plan, to: planVersion }]);
      expect(await differences("Batch 1")).toEqual([]);
      expect(await typedInto("Batch 1")).toEqual(typed);
    },
    benchTimeout,
  );

  it(
    "in a season: each of its batches, of either method",
    async () => {
      await openFile(bench, season);
      const before = await Excel.run(readOutlook);
      const typed = await Promise.all(before.map(({ outlook }) => typedInto(outlook.sheetName)));
      const { migrated, left } = await migrate();
      await bench.calculate();
      expect([migrated.length, left]).toEqual([before.length, []]);
      for (const [index, { outlook }] of before.entries()) {
        expect(await differences(outlook.sheetName), outlook.sheetName).toEqual([]);
        expect(await typedInto(outlook.sheetName)).toEqual(typed[index]);
      }
    },
    4 * benchTimeout,
  );
});

describe("a sheet of the second plan", () => {
  it(
    "keeps what the brewer wrote over words and formulas of ours, and says where",
    async () => {
      await openFile(bench, secondPlan);
      await change((sheet) => {
        for (const name of ["water_collect", "sugar_mass", "next_step"]) sheet.names.getItem(name).getRange().formulas = [["=1+1"]];
      });
      await bench.calculate();
      const { migrated } = await migrate();
      await bench.calculate();
      const sheet: NamedCells = (await Excel.run((context) => readBatchSheet(context, "Batch 1")))!;
      for (const name of ["water_collect", "sugar_mass", "next_step"]) expect(sheet.formula(name)).toBe("=1+1");
      const news = migrated[0]!.stays.join(" ");
      const changed = (await differences("Batch 1")).map((one) => one.split(":")[0]!);
      expect(changed).toEqual(["water_collect", "next_step", "sugar_mass"].map((name) => sheet.range(name)));
      // Where today's formula is still the former one, the brewer's own says nothing new.
      const plan = planBatch(batchContents(sheet));
      for (const name of ["water_collect", "sugar_mass", "next_step"]) {
        const address = plan.names.find((one) => one.name === name)?.range;
        expect(news.includes(sheet.range(name)), name).toBe(!isOurs(plan.cells.find((cell) => cell.address === address)?.content));
      }
    },
    benchTimeout,
  );

  it(
    "in a day that is still to come, gets today's steps",
    async () => {
      await openFile(bench, secondPlan);
      await change((sheet) => {
        sheet.names.getItem("happened").getRange().clear("Contents");
      });
      await bench.calculate();
      const { migrated } = await migrate();
      await bench.calculate();
      expect(migrated[0]!.stays).toEqual([]);
      const contents = batchContents((await Excel.run((context) => readBatchSheet(context, "Batch 1")))!);
      expect(contents.steps).toBeUndefined();
    },
    benchTimeout,
  );

  it(
    "takes a word for a hop's minutes afterwards",
    async () => {
      await openFile(bench, secondPlan);
      const rule = () =>
        Excel.run(async (context) => {
          const validation = context.workbook.worksheets
            .getItem("Batch 1")
            .names.getItem("hop_minutes")
            .getRange()
            .dataValidation.load("type");
          await context.sync();
          return validation.type;
        });
      expect(await rule()).toBe("Decimal");
      await migrate();
      expect(await rule()).toBe("None");
    },
    benchTimeout,
  );
});

describe("a sheet of the first plan", () => {
  beforeEach(openOldSample, benchTimeout);

  it(
    "gets what the present plan has; what was typed stays",
    async () => {
      const typed = await typedInto("Batch 1");
      const syncs = bench.host.faults.syncCount;
      const report = await migrate();
      // Two to read, one to ask for the functions, one to write, two for the old chart and the looks.
      expect(bench.host.faults.syncCount - syncs).toBe(6);
      await bench.calculate();
      expect(report).toMatchObject({ migrated: [{ sheetName: "Batch 1", from: 1, to: planVersion }], left: [] });
      const { added } = report.migrated[0]!;
      for (const words of [
        "“Tells this batch from every other:” (O1)",
        "“Planned on the kit:” (L2)",
        "today's chart in the place of the old one, with its figures (W84:AI117)",
      ])
        expect(added).toContain(words);
      // What the second plan had put in beyond the first without a name is not asked for.
      const sheet1: NamedCells = (await Excel.run((context) => readBatchSheet(context, "Batch 1")))!;
      const plan = planBatch(batchContents(sheet1), standing(sheet1));
      const place = placeMap(plan, sheet1);
      for (const { name, range } of plan.names.filter((one) => !one.range.includes(":") && sheet1.has(one.name))) {
        const content = plan.cells.find(({ address }) => address === range)?.content;
        if (typeof content === "string" && content.startsWith("=")) expect(sheet1.formula(name), name).toBe(moved(content, place));
      }
      expect(await typedInto("Batch 1")).toEqual(typed);
      const sheet = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
      const { id, ...contents } = batchContents(sheet!);
      expect(id).toMatch(/^[a-z0-9]{12}$/u);
      // The day that was brewed collected what its sheet said then, and keeps its times and its warmest place.
      const { happened, packaging, wort, steps } = contents;
      expect(steps?.[0]?.what).toContain("Clean everything");
      expect(wort.collected).toBeGreaterThan(5.5);
      expect(rounded({ ...contents, id: firstExtractBatch().id })).toEqual(
        rounded({
          ...firstExtractBatch(),
          ...recipeOfThen,
          steps,
          happened,
          packaging: { ...firstExtractBatch().packaging, warmestStorage: packaging.warmestStorage },
          wort: { ...firstExtractBatch().wort, collected: wort.collected },
        }),
      );
      expect(sheet!.range("kit_name")).toBe("L2");
    },
    benchTimeout,
  );

  it(
    "once updated is left alone",
    async () => {
      await migrate();
      await bench.calculate();
      const before = whole();
      expect(await migrate()).toEqual({ migrated: [], left: [] });
      expect(whole()).toEqual(before);
    },
    benchTimeout,
  );

  it(
    "is found where rows were put in above, and its user's cells are not taken",
    async () => {
      await change((sheet) => {
        sheet.getRange("1:2").insert("Down");
        sheet.getRange("O3").values = [["my own remark"]];
      });
      await bench.calculate();
      const typed = await typedInto("Batch 1");
      const { migrated } = await migrate();
      const [mark = "", kit = ""] = migrated[0]!.added;
      expect(kit).toContain("(L4)");
      expect(mark).toMatch(/\(O1\d\d\)$/u);
      await bench.calculate();
      expect((await Excel.run((context) => readBatchSheet(context, "Batch 1")))!.at(3, 15)).toBe("my own remark");
      expect(await typedInto("Batch 1")).toEqual(typed);
    },
    benchTimeout,
  );

  it(
    "stays as it was when Excel refuses in the middle of the writing",
    async () => {
      const before = contentOf();
      await expect(
        Excel.run(async (context) => {
          // Somebody else takes the name between our reading and our writing.
          const { worksheets } = context.workbook;
          const getItem = worksheets.getItem.bind(worksheets);
          Object.defineProperty(worksheets, "getItem", {
            configurable: true,
            value: (name: string) => {
              const sheet = getItem(name);
              const add = sheet.names.add.bind(sheet.names);
              Object.defineProperty(sheet.names, "add", {
                value: (wanted: string, range: Excel.Range) => add(wanted === "kit_name" ? "no name" : wanted, range),
              });
              return sheet;
            },
          });
          await migrateSheets(context);
        }),
      ).rejects.toMatchObject({ code: "InvalidArgument" });
      await bench.calculate();
      expect(contentOf()).toEqual(before);
      const sheet = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
      expect([sheet!.has("batch_id"), sheet!.has("kit_name"), sheet!.value("gylebook")]).toEqual([false, false, 1]);
    },
    benchTimeout,
  );
});

describe("the chart of a sheet of the first plan", () => {
  beforeEach(openOldSample, benchTimeout);

  it(
    "gives way to the one that a new sheet has, drawn from the same kind of figures",
    async () => {
      await migrate();
      await insertOn(bench, { ...firstExtractBatch(), sheetName: "New", id: "new1" });
      await bench.calculate();
      const [migrated, fresh] = [charts("Batch 1"), charts("New")];
      expect([migrated.length, fresh.length]).toEqual([1, 1]);
      expect(migrated[0]!.name).toBe("Fermentation");
      // Rows apart (12 lines of readings against 16), and the sheet that they are on.
      const looks = (chart: ChartRecord) => ({
        ...chart,
        id: "",
        position: 0,
        anchor: 0,
        series: chart.series.map((series) => ({
          ...series,
          values: [series.values?.row, series.values?.column],
          xValues: [series.xValues?.row, series.xValues?.column],
        })),
      });
      expect(looks(migrated[0]!)).toEqual(looks(fresh[0]!));
      expect(migrated[0]!.anchor).toEqual({ startCell: "I84", endCell: "I96" });
      expect(migrated[0]!.series[0]!.values?.rowCount).toBe(13);
      // What the yeast was given, then the readings, the last repeated to the end; no cell is an error or a text where a point is drawn.
      const sheet = (await Excel.run((context) => readBatchSheet(context, "Batch 1")))!;
      const marks = Array.from({ length: 13 }, (_, row) => sheet.at(85 + row, 29));
      const read = sheet
        .block("gravities")
        .flat()
        .filter((gravity) => gravity !== "");
      expect(read.length).toBeGreaterThan(2);
      expect(marks.slice(1)).toEqual(Array.from({ length: 12 }, (_, row) => read[Math.min(row, read.length - 1)]));
      expect(marks.every((mark) => typeof mark === "number" && mark > 1 && mark < 1.2)).toBe(true);
      expect(
        sheet
          .block("curve")
          .flat()
          .every((value) => typeof value === "number"),
      ).toBe(true);
      expect(
        sheet
          .block("chart_days")
          .flat()
          .every((value) => typeof value === "number" && value > 40_000),
      ).toBe(true);
    },
    benchTimeout,
  );

  it(
    "is not missed where somebody took it away",
    async () => {
      await change((sheet) => sheet.charts.getItem("Fermentation").delete());
      const { migrated } = await migrate();
      expect(migrated[0]!.added.join()).not.toContain("chart");
      expect(charts("Batch 1")).toEqual([]);
    },
    benchTimeout,
  );

  it(
    "stays, and the reason is told, where the cells for today's are in use",
    async () => {
      await change((sheet) => {
        sheet.getRange("AB90").values = [["my own"]];
      });
      const before = charts("Batch 1");
      const { migrated } = await migrate();
      expect(migrated[0]).toMatchObject({
        stays: expect.arrayContaining([
          "Its old chart stays, since the cells W84:AI117, which today's chart is drawn from, are in use.",
        ]) as string[],
      });
      expect(charts("Batch 1")).toEqual(before);
      expect((await Excel.run((context) => readBatchSheet(context, "Batch 1")))!.has("curve")).toBe(false);
    },
    benchTimeout,
  );

  it.each(["the new chart's place", "the old chart's deletion", "the new figures"])(
    "is as it was when Excel refuses %s",
    async (what) => {
      const before = whole();
      await expect(
        Excel.run(async (context) => {
          const { worksheets } = context.workbook;
          const getItem = worksheets.getItem.bind(worksheets);
          Object.defineProperty(worksheets, "getItem", {
            configurable: true,
            value: (name: string) => {
              const sheet = getItem(name);
              const refuse = () => sheet.names.add("no name", sheet.getRange("A1"));
              if (what === "the old chart's deletion") {
                const find = sheet.charts.getItemOrNullObject.bind(sheet.charts);
                Object.defineProperty(sheet.charts, "getItemOrNullObject", {
                  value: (name: string) => {
                    const chart = find(name);
                    if (name === "Fermentation") Object.defineProperty(chart, "delete", { value: refuse });
                    return chart;
                  },
                });
              } else if (what === "the new chart's place") {
                const add = sheet.charts.add.bind(sheet.charts);
                Object.defineProperty(sheet.charts, "add", {
                  value: (...given: Parameters<typeof add>) => {
                    const chart = add(...given);
                    Object.defineProperty(chart, "setPosition", { value: refuse });
                    return chart;
                  },
                });
              } else {
                const range = sheet.getRange.bind(sheet);
                Object.defineProperty(sheet, "getRange", {
                  value: (address: string) => {
                    if (address === "W84:AI117") refuse();
                    return range(address);
                  },
                });
              }
              return sheet;
            },
          });
          await migrateSheets(context);
        }),
      ).rejects.toMatchObject({ code: "InvalidArgument" });
      await bench.calculate();
      const after = whole();
      expect(after.cells).toEqual(before.cells);
      expect(after.charts).toEqual(before.charts);
      expect((await Excel.run((context) => readBatchSheet(context, "Batch 1")))!.has("curve")).toBe(false);
    },
    benchTimeout,
  );
});

describe("sheets that are left as they are", () => {
  beforeEach(openOldSample, benchTimeout);

  it.each([
    [
      "of a newer plan",
      (sheet: Excel.Worksheet) => {
        sheet.getRange("L1").values = [[planVersion + 1]];
      },
      "newer",
      "a newer Gylebook made it",
    ],
    [
      "whose mark was typed over",
      (sheet: Excel.Worksheet) => {
        sheet.getRange("L1").values = [["one"]];
      },
      "refused",
      'holds "one"',
    ],
    [
      "that are protected",
      (sheet: Excel.Worksheet) => {
        sheet.protection.protect();
      },
      "refused",
      "unprotect it first",
    ],
    [
      "with such a name already",
      (sheet: Excel.Worksheet) => {
        sheet.names.add("kit_name", sheet.getRange("A1"));
      },
      "refused",
      'a name "kit_name" of its own',
    ],
  ])(
    "%s",
    async (_what, work, state, words) => {
      await change(work);
      const before = contentOf();
      const report = await migrate();
      expect(report.migrated).toEqual([]);
      expect(report.left).toMatchObject([{ sheetName: "Batch 1", state, reason: expect.stringContaining(words) as string }]);
      expect(contentOf()).toEqual(before);
    },
    benchTimeout,
  );

  it(
    "those that lack a cell that is needed",
    async () => {
      await change((sheet) => sheet.names.getItem("volume").delete());
      await bench.calculate();
      expect((await migrate()).left).toMatchObject([{ state: "refused", reason: "a cell that it needs was deleted: volume" }]);
    },
    benchTimeout,
  );

  it(
    "that are unplugged, until they are plugged back in",
    async () => {
      await Excel.run((context) => unpluggedCopies(context, ["Batch 1"], { prices: true, standalone: false }));
      await bench.calculate();
      const report = await migrate();
      expect(report.migrated).toMatchObject([{ sheetName: "Batch 1" }]);
      expect(report.left).toMatchObject([
        { sheetName: "Batch 1 unplugged", version: 1, state: "refused", reason: "it is unplugged: plug it back in first (Share, Unplug)" },
      ]);
      await Excel.run((context) => plugIn(context, "Batch 1 unplugged", { leaveChanged: false }));
      await bench.calculate();
      expect((await migrate()).migrated).toMatchObject([{ sheetName: "Batch 1 unplugged" }]);
    },
    benchTimeout,
  );

  it(
    "today's, and those not asked for",
    async () => {
      await insertOn(bench, { ...firstExtractBatch(), sheetName: "New", id: "new1" });
      expect((await Excel.run(readOutlook)).map(({ outlook }) => [outlook.sheetName, outlook.state])).toEqual([
        ["Batch 1", "older"],
        ["New", "current"],
      ]);
      expect(await migrate(["New"])).toEqual({ migrated: [], left: [] });
      expect((await migrate(["Batch 1"])).migrated).toHaveLength(1);
    },
    benchTimeout,
  );
});

it("the new names of every version are listed, and today's plan has them", () => {
  expect(Object.keys(newNames).map(Number)).toEqual(Array.from({ length: planVersion - 1 }, (_, index) => index + 2));
  const names = planBatch(firstExtractBatch()).names.map(({ name }) => name);
  for (const name of Object.values(newNames).flat()) expect(names).toContain(name);
});
