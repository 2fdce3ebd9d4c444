import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/bench/headless";
import type { ChartRecord } from "../../src/bench/excel/sheet-extras";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planVersion } from "../../src/workbook/batch/card";
import { migrateSheets, readOutlook } from "../../src/workbook/migrate";
import { steps } from "../../src/workbook/migrate/steps";
import { batchContents } from "../../src/workbook/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/read/batch-sheets";
import { plugIn, unpluggedCopies } from "../../src/workbook/unplug";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";
import { openFile } from "../support/open-file";

/** The sample workbook as the first Gylebook made it, kept as it was. */
const oldSample = new URL("../samples/old/first-extract-batch-plan-1.xlsx", import.meta.url);

let bench: HeadlessBench;
beforeAll(async () => { bench = await openBatchBench(); }, benchTimeout);
afterAll(() => bench.dispose());
beforeEach(() => openFile(bench, oldSample), benchTimeout);

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
const rounded = (contents: object): unknown => JSON.parse(JSON.stringify(contents), (_key, value: unknown) => (typeof value === "number" ? Math.round(value * 1e5) / 1e5 : value));

const change = (work: (sheet: Excel.Worksheet) => void) => Excel.run(async (context) => {
  work(context.workbook.worksheets.getItem("Batch 1"));
  await context.sync();
});

describe("a sheet of the first plan", () => {
  it("gets what the present plan has, and nothing else changes", async () => {
    const before = contentOf();
    const syncs = bench.host.faults.syncCount;
    const report = await migrate();
    expect(bench.host.faults.syncCount - syncs).toBe(3);
    await bench.calculate();
    expect(report).toEqual({
      migrated: [{ sheetName: "Batch 1", from: 1, to: planVersion, added: ["a mark that tells the batch from every other (O1)", "a place for the name of its kit (L2)", "today's chart in the place of the old one, with its figures (W84:AI117)"] }],
      left: [],
    });
    const after = contentOf();
    const changed = Object.keys(after).filter((cell) => JSON.stringify(after[cell]) !== JSON.stringify(before[cell]));
    // Counted from 0: W84:AI117 are the chart's figures.
    const isOfChart = (cell: string): boolean => { const [row = 0, column = 0] = cell.replace("Batch 1 ", "").split(",").map(Number); return row >= 83 && row <= 116 && column >= 22 && column <= 34; };
    expect(changed.filter(isOfChart).length).toBeGreaterThan(100);
    // The version in L1, the mark in O1 with its label, the label of the kit.
    expect(changed.filter((cell) => !isOfChart(cell)).sort()).toEqual(["Batch 1 0,11", "Batch 1 0,13", "Batch 1 0,14", "Batch 1 1,10"]);
    const sheet = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
    const { id, ...contents } = batchContents(sheet!);
    expect(id).toMatch(/^[a-z0-9]{12}$/u);
    expect(rounded({ ...contents, id: firstExtractBatch().id })).toEqual(rounded(firstExtractBatch()));
    expect(sheet!.range("kit_name")).toBe("L2");
  }, benchTimeout);

  it("once brought along is left alone", async () => {
    await migrate();
    await bench.calculate();
    const before = whole();
    expect(await migrate()).toEqual({ migrated: [], left: [] });
    expect(whole()).toEqual(before);
  }, benchTimeout);

  it("is found where rows were put in above, and its user's cells are not taken", async () => {
    await change((sheet) => {
      sheet.getRange("1:2").insert("Down");
      sheet.getRange("O3").values = [["my own remark"]];
    });
    await bench.calculate();
    const before = contentOf();
    const { migrated } = await migrate();
    const [mark = "", kit = ""] = migrated[0]!.added;
    expect(kit).toContain("(L4)");
    expect(mark).toMatch(/\(L1\d\d\)$/u);
    await bench.calculate();
    const after = contentOf();
    for (const [cell, content] of Object.entries(before)) if (!cell.endsWith(" 2,11")) expect(after[cell], cell).toEqual(content);
  }, benchTimeout);

  it.each([1, 2, 3])("stays as it was when round trip %i fails", async (n) => {
    const before = whole();
    bench.host.faults.failAtSync(n, new Error("the host is busy"));
    await expect(migrate()).rejects.toThrow("the host is busy");
    expect(whole()).toEqual(before);
    expect(await Excel.run(readOutlook)).toMatchObject([{ outlook: { state: "older", version: 1 } }]);
  }, benchTimeout);

  it("stays as it was when Excel refuses in the middle of the writing", async () => {
    const before = contentOf();
    await expect(Excel.run(async (context) => {
      // Somebody else takes the name between our reading and our writing.
      const { worksheets } = context.workbook;
      const getItem = worksheets.getItem.bind(worksheets);
      Object.defineProperty(worksheets, "getItem", { configurable: true, value: (name: string) => {
        const sheet = getItem(name);
        const add = sheet.names.add.bind(sheet.names);
        Object.defineProperty(sheet.names, "add", { value: (wanted: string, range: Excel.Range) => add(wanted === "kit_name" ? "no name" : wanted, range) });
        return sheet;
      } });
      await migrateSheets(context);
    })).rejects.toMatchObject({ code: "InvalidArgument" });
    await bench.calculate();
    expect(contentOf()).toEqual(before);
    const sheet = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
    expect([sheet!.has("batch_id"), sheet!.has("kit_name"), sheet!.value("gylebook")]).toEqual([false, false, 1]);
  }, benchTimeout);
});

it("says so when it could not be taken back either", async () => {
  bench.host.faults.failAtSync(3, new Error("the host is busy"));
  bench.host.faults.failAtSync(4, new Error("the host is gone"));
  await expect(migrate()).rejects.toThrow('"Batch 1": some empty cells beside the printed part may have been filled');
}, benchTimeout);

describe("the chart of a sheet of the first plan", () => {
  it("gives way to the one that a new sheet has, drawn from the same kind of figures", async () => {
    await migrate();
    await insertOn(bench, { ...firstExtractBatch(), sheetName: "New", id: "new1" });
    await bench.calculate();
    const [migrated, fresh] = [charts("Batch 1"), charts("New")];
    expect([migrated.length, fresh.length]).toEqual([1, 1]);
    expect(migrated[0]!.name).toBe("Fermentation");
    // Rows apart (12 lines of readings against 16), and the sheet that they are on.
    const looks = (chart: ChartRecord) => ({ ...chart, id: "", position: 0, anchor: 0, series: chart.series.map((series) => ({ ...series, values: [series.values?.row, series.values?.column], xValues: [series.xValues?.row, series.xValues?.column] })) });
    expect(looks(migrated[0]!)).toEqual(looks(fresh[0]!));
    expect(migrated[0]!.anchor).toEqual({ startCell: "I84", endCell: "I96" });
    expect(migrated[0]!.series[0]!.values?.rowCount).toBe(13);
    // What the yeast was given, then the readings, the last repeated to the end; no cell is an error or a text where a point is drawn.
    const sheet = (await Excel.run((context) => readBatchSheet(context, "Batch 1")))!;
    const marks = Array.from({ length: 13 }, (_, row) => sheet.at(85 + row, 29));
    const read = sheet.block("gravities").flat().filter((gravity) => gravity !== "");
    expect(read.length).toBeGreaterThan(2);
    expect(marks.slice(1)).toEqual(Array.from({ length: 12 }, (_, row) => read[Math.min(row, read.length - 1)]));
    expect(marks.every((mark) => typeof mark === "number" && mark > 1 && mark < 1.2)).toBe(true);
    expect(sheet.block("curve").flat().every((value) => typeof value === "number")).toBe(true);
    expect(sheet.block("chart_days").flat().every((value) => typeof value === "number" && value > 40_000)).toBe(true);
  }, benchTimeout);

  it("is not missed where somebody took it away", async () => {
    await change((sheet) => sheet.charts.getItem("Fermentation").delete());
    const { migrated } = await migrate();
    expect(migrated[0]!.added).toHaveLength(2);
    expect(charts("Batch 1")).toEqual([]);
  }, benchTimeout);

  it("stays, and the reason is told, where the cells for today's are in use", async () => {
    await change((sheet) => { sheet.getRange("AB90").values = [["my own"]]; });
    const before = charts("Batch 1");
    const { migrated } = await migrate();
    expect(migrated[0]).toMatchObject({ chartStays: "the cells W84:AI117, which today's chart is drawn from, are in use" });
    expect(charts("Batch 1")).toEqual(before);
    expect((await Excel.run((context) => readBatchSheet(context, "Batch 1")))!.has("curve")).toBe(false);
  }, benchTimeout);

  it.each(["the new chart's place", "the old chart's deletion", "the new figures"])("is as it was when Excel refuses %s", async (what) => {
    const before = whole();
    await expect(Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const getItem = worksheets.getItem.bind(worksheets);
      Object.defineProperty(worksheets, "getItem", { configurable: true, value: (name: string) => {
        const sheet = getItem(name);
        const refuse = () => sheet.names.add("no name", sheet.getRange("A1"));
        if (what === "the old chart's deletion") {
          const old = sheet.charts.getItem.bind(sheet.charts);
          Object.defineProperty(sheet.charts, "getItem", { value: (chart: string) => { refuse(); return old(chart); } });
        } else if (what === "the new chart's place") {
          const add = sheet.charts.add.bind(sheet.charts);
          Object.defineProperty(sheet.charts, "add", { value: (...given: Parameters<typeof add>) => { const chart = add(...given); Object.defineProperty(chart, "setPosition", { value: refuse }); return chart; } });
        } else {
          const range = sheet.getRange.bind(sheet);
          Object.defineProperty(sheet, "getRange", { value: (address: string) => { if (address === "W84:AI117") refuse(); return range(address); } });
        }
        return sheet;
      } });
      await migrateSheets(context);
    })).rejects.toMatchObject({ code: "InvalidArgument" });
    await bench.calculate();
    const after = whole();
    expect(after.cells).toEqual(before.cells);
    expect(after.charts).toEqual(before.charts);
    expect((await Excel.run((context) => readBatchSheet(context, "Batch 1")))!.has("curve")).toBe(false);
  }, benchTimeout);
});

describe("sheets that are left as they are", () => {
  it.each([
    ["of a newer plan", (sheet: Excel.Worksheet) => { sheet.getRange("L1").values = [[planVersion + 1]]; }, "newer", "a newer Gylebook made it"],
    ["whose mark was typed over", (sheet: Excel.Worksheet) => { sheet.getRange("L1").values = [["one"]]; }, "refused", 'holds "one"'],
    ["that are protected", (sheet: Excel.Worksheet) => { sheet.protection.protect(); }, "refused", "unprotect it first"],
    ["with such a name already", (sheet: Excel.Worksheet) => { sheet.names.add("kit_name", sheet.getRange("A1")); }, "refused", 'a name "kit_name" of its own'],
  ])("%s", async (_what, work, state, words) => {
    await change(work);
    const before = contentOf();
    const report = await migrate();
    expect(report.migrated).toEqual([]);
    expect(report.left).toMatchObject([{ sheetName: "Batch 1", state, reason: expect.stringContaining(words) as string }]);
    expect(contentOf()).toEqual(before);
  }, benchTimeout);

  it("that are unplugged, until they are plugged back in", async () => {
    await Excel.run((context) => unpluggedCopies(context, ["Batch 1"], { prices: true, standalone: false }));
    await bench.calculate();
    const report = await migrate();
    expect(report.migrated).toMatchObject([{ sheetName: "Batch 1" }]);
    expect(report.left).toMatchObject([{ sheetName: "Batch 1 unplugged", version: 1, state: "refused", reason: "it is unplugged: plug it back in first (Share, Unplug)" }]);
    await Excel.run((context) => plugIn(context, "Batch 1 unplugged", { leaveChanged: false }));
    await bench.calculate();
    expect((await migrate()).migrated).toMatchObject([{ sheetName: "Batch 1 unplugged" }]);
  }, benchTimeout);

  it("today's, and those not asked for", async () => {
    await insertOn(bench, { ...firstExtractBatch(), sheetName: "New", id: "new1" });
    expect((await Excel.run(readOutlook)).map(({ outlook }) => [outlook.sheetName, outlook.state])).toEqual([["Batch 1", "older"], ["New", "current"]]);
    expect(await migrate(["New"])).toEqual({ migrated: [], left: [] });
    expect((await migrate(["Batch 1"])).migrated).toHaveLength(1);
  }, benchTimeout);
});

it("there is a step to every version of the plan", () => {
  expect(steps.map(({ to }) => to)).toEqual(Array.from({ length: planVersion - 1 }, (_, index) => index + 2));
});
