import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/bench/headless";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planVersion } from "../../src/workbook/batch/card";
import { migrateSheets, readOutlook } from "../../src/workbook/migrate";
import { steps } from "../../src/workbook/migrate/steps";
import { batchContents } from "../../src/workbook/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/read/batch-sheets";
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
      migrated: [{ sheetName: "Batch 1", from: 1, to: planVersion, added: ["a mark that tells the batch from every other (O1)", "a place for the name of its kit (L2)"] }],
      left: [],
    });
    const after = contentOf();
    const changed = Object.keys(after).filter((cell) => JSON.stringify(after[cell]) !== JSON.stringify(before[cell]));
    // Counted from 0: the version in L1, the mark in O1 with its label, the label of the kit.
    expect(changed.sort()).toEqual(["Batch 1 0,11", "Batch 1 0,13", "Batch 1 0,14", "Batch 1 1,10"]);
    const sheet = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
    const { id, ...contents } = batchContents(sheet!);
    expect(id).toMatch(/^[a-z0-9]{12}$/u);
    expect(rounded({ ...contents, id: firstExtractBatch().id })).toEqual(rounded(firstExtractBatch()));
    expect(sheet!.range("kit_name")).toBe("L2");
  }, benchTimeout);

  it("once brought along is left alone", async () => {
    await migrate();
    const before = contentOf();
    expect(await migrate()).toEqual({ migrated: [], left: [] });
    expect(contentOf()).toEqual(before);
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
    const before = contentOf();
    bench.host.faults.failAtSync(n, new Error("the host is busy"));
    await expect(migrate()).rejects.toThrow("the host is busy");
    expect(contentOf()).toEqual(before);
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
