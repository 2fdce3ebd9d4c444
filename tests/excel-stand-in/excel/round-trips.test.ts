import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

type Context = InstanceType<HeadlessBench["Excel"]["RequestContext"]>;
type Book = Context["workbook"];
type Sheet = ReturnType<Book["worksheets"]["getItem"]>;

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() => bench.load({ id: "book", sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } }));

const sheetNames = () =>
  bench.univerAPI
    .getActiveWorkbook()!
    .getSheets()
    .map((sheet) => sheet.getSheetName());

describe("reading", () => {
  it("throws Excel's error for what was not loaded, or not synced yet", async () => {
    await bench.Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Sheet1").getRange("A1");
      expect(() => range.values).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      range.load("values");
      expect(() => range.values).toThrow(/call the load method/u);
      await context.sync();
      expect(range.values).toEqual([[""]]);
      expect(() => range.formulas).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
    });
  });

  it("follows paths, lists and objects of properties", async () => {
    await bench.Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Sheet1").getRange("B2:C4");
      range.load("address,rowIndex,format/font/bold").load(["columnCount"]).load({ rowCount: true });
      await context.sync();
      expect([range.address, range.rowIndex, range.columnCount, range.rowCount, range.format.font.bold]).toEqual([
        "Sheet1!B2:C4",
        1,
        2,
        3,
        false,
      ]);
      expect(() => range.load("colour")).toThrow(expect.objectContaining({ code: "InvalidArgument" }));
    });
  });

  it("gives back at once what was set", async () => {
    await bench.Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Sheet1").getRange("A1");
      range.values = [[5]];
      expect(range.values).toEqual([[5]]);
    });
  });

  it("sees the results of what was written before it in the same round trip", async () => {
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      sheet.getRange("A1:A2").values = [[1050], [1010]];
      sheet.getRange("B1").formulas = [["=GYLE.GAP(A1,A2)"]];
      const result = sheet.getRange("B1").load("values,formulas");
      await context.sync();
      expect([result.values, result.formulas]).toEqual([[[40]], [["=GYLE.GAP(A1,A2)"]]]);
    });
  });
});

describe("writing", () => {
  it("waits for the sync and keeps the order", async () => {
    await bench.Excel.run(async (context) => {
      const cell = context.workbook.worksheets.getItem("Sheet1").getRange("A1");
      cell.values = [[1]];
      const between = context.workbook.worksheets.getItem("Sheet1").getRange("A1").load("values");
      cell.values = [[2]];
      expect(bench.valueAt("Sheet1", "A1")).toBeNull();
      await context.sync();
      expect(between.values).toEqual([[1]]);
    });
    expect(bench.valueAt("Sheet1", "A1")).toBe(2);
  });

  it("is done at the end of run without asking", async () => {
    await bench.Excel.run(async (context) => {
      context.workbook.worksheets.add("Extra");
    });
    expect(sheetNames()).toEqual(["Sheet1", "Extra"]);
  });

  it("is taken back by one undo per round trip", async () => {
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.add("Batch 1");
      sheet.getRange("A1:B2").values = [
        ["Malt", "Mass"],
        ["Pale", 4],
      ];
      sheet.tables.add("A1:B2", true).name = "Malts";
      sheet.names.add("mass", sheet.getRange("B2"));
      sheet.getRange("A1").format.fill.color = "#EEEEEE";
      await context.sync();
    });
    await bench.univerAPI.undo();
    expect(sheetNames()).toEqual(["Sheet1"]);
    expect(bench.univerAPI.getActiveWorkbook()!.getDefinedNames()).toEqual([]);
    await bench.univerAPI.redo();
    await bench.calculate();
    expect([sheetNames(), bench.valueAt("Batch 1", "B2")]).toEqual([["Sheet1", "Batch 1"], 4]);
  });

  it.each<[string, (sheet: Sheet, workbook: Book) => void]>([
    ["renaming a sheet", (sheet) => Object.assign(sheet, { name: "Batch 1" })],
    ["moving a sheet", (sheet) => Object.assign(sheet, { position: 1 })],
    ["hiding a sheet", (sheet) => Object.assign(sheet, { visibility: "Hidden" })],
    ["copying a sheet", (sheet) => sheet.copy("End")],
    ["deleting a sheet", (sheet) => sheet.delete()],
    ["protecting a sheet", (sheet) => sheet.protection.protect()],
    ["protecting the workbook", (_sheet, workbook) => workbook.protection.protect()],
  ])("ends the undo history, and cannot be merged into a step: %s", async (_what, change) => {
    const typeAndChange = async (context: Context) => {
      const { workbook } = context;
      workbook.worksheets.getItem("Sheet1").getRange("A1").values = [["typed"]];
      await context.sync();
      change(workbook.worksheets.getItem("Other"), workbook);
      workbook.worksheets.getItem("Sheet1").getRange("A2").values = [["after"]];
      await context.sync();
    };
    await bench.Excel.run(async (context) => void context.workbook.worksheets.add("Other"));
    const merged = bench.Excel.run({ mergeUndoGroup: true }, typeAndChange);
    await expect(merged).rejects.toMatchObject({ code: "UndoNotSupported" });
    await bench.Excel.run(typeAndChange);
    for (let step = 0; step < 5; step++) await bench.univerAPI.undo();
    expect([bench.valueAt("Sheet1", "A1"), bench.valueAt("Sheet1", "A2")]).toEqual(["typed", null]);
  });

  it("round trips are one step where asked for, and what a person does between them is not in it", async () => {
    const write = (values: unknown[]) => async (context: Context) => {
      for (const [row, value] of values.entries()) {
        context.workbook.worksheets.getItem("Sheet1").getCell(row, 0).values = [[value]];
        await context.sync();
      }
    };
    const column = () => ["A1", "A2", "A3"].map((cell) => bench.valueAt("Sheet1", cell));
    await bench.Excel.run(write([1, 2, 3]));
    await bench.Excel.run({ mergeUndoGroup: true }, write(["one", "two", "three"]));
    expect(column()).toEqual(["one", "two", "three"]);
    await bench.univerAPI.undo();
    expect(column()).toEqual([1, 2, 3]);
    await bench.univerAPI.redo();
    expect(column()).toEqual(["one", "two", "three"]);
    for (let step = 0; step < 2; step++) await bench.univerAPI.undo();
    expect(column()).toEqual([1, 2, null]);
  });

  it.each([
    ["too few rows", [[1, 2]]],
    ["ragged rows", [[1, 2], [3]]],
    ["no rows", []],
  ])("refuses %s", async (_what, values) => {
    const attempt = bench.Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRange("A1:B2").values = values;
    });
    await expect(attempt).rejects.toMatchObject({ code: "InvalidArgument" });
  });
});

describe("failures", () => {
  it("ItemNotFound for what is not there, isNullObject for the asking kind", async () => {
    await bench.Excel.run(async (context) => {
      const nowhere = context.workbook.worksheets.getItemOrNullObject("Nowhere").load("name");
      expect(() => nowhere.isNullObject).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      await context.sync();
      expect(nowhere.isNullObject).toBe(true);
      context.workbook.worksheets.getItem("Nowhere").getRange("A1").values = [[1]];
      await expect(context.sync()).rejects.toMatchObject({ code: "ItemNotFound" });
    });
  });

  it("leave what came before them done, and drop what comes after", async () => {
    const attempt = bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      sheet.getRange("A1").values = [["before"]];
      context.workbook.worksheets.getItem("Nowhere").activate();
      sheet.getRange("A2").values = [["after"]];
    });
    await expect(attempt).rejects.toMatchObject({ code: "ItemNotFound" });
    expect([bench.valueAt("Sheet1", "A1"), bench.valueAt("Sheet1", "A2")]).toEqual(["before", null]);
  });

  it("planned for a test happen before anything of that round trip is applied", async () => {
    bench.host.faults.failAtSync(2, new Error("the connection broke"));
    const before = bench.host.faults.syncCount;
    const attempt = bench.Excel.run(async (context) => {
      context.workbook.worksheets.add("First");
      await context.sync();
      context.workbook.worksheets.add("Second");
      await context.sync();
    });
    await expect(attempt).rejects.toThrow("the connection broke");
    expect([sheetNames(), bench.host.faults.syncCount - before]).toEqual([["Sheet1", "First"], 2]);
  });

  it.each([
    ["refused before", null, null],
    ["refused within", 1, null],
    ["answer lost", 1, 2],
    ["host gone", null, null],
  ] as const)("can be %s", async (fault, first, second) => {
    const { faults } = bench.host;
    faults.failAtSync(1, new Error("the connection broke"), fault);
    const cells = await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      const [one, two] = [sheet.getRange("A1"), sheet.getRange("A2")];
      one.values = [[1]];
      two.values = [[2]];
      const seen = sheet.load("name");
      await expect(context.sync()).rejects.toThrow("the connection broke");
      expect(() => seen.name).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      return [bench.valueAt("Sheet1", "A1"), bench.valueAt("Sheet1", "A2")];
    });
    expect(cells).toEqual([first, second]);
    const next = bench.Excel.run((context) => context.sync("answered"));
    await (fault === "host gone" ? expect(next).rejects.toThrow("the connection broke") : expect(next).resolves.toBe("answered"));
    faults.clear();
    await expect(bench.Excel.run((context) => context.sync("answered"))).resolves.toBe("answered");
  });

  it("within, at any place of the round trip", async () => {
    const left: unknown[] = [];
    for (const share of [0, 0.7, 1]) {
      bench.host.faults.failAtSync(1, new Error("the connection broke"), "refused within", share);
      const attempt = bench.Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Sheet1");
        for (const cell of ["B1", "B2", "B3", "B4"]) sheet.getRange(cell).values = [[share]];
      });
      await expect(attempt).rejects.toThrow("the connection broke");
      left.push(["B1", "B2", "B3", "B4"].filter((cell) => bench.valueAt("Sheet1", cell) === share).length);
    }
    expect(left).toEqual([0, 2, 4]);
  });

  it("while somebody types in a cell, unless asked to wait", async () => {
    let typing = true;
    const wait = {
      active: () => typing,
      ended: async () => {
        typing = false;
      },
    };
    bench.host.cellEditing = wait;
    const write = async (context: { workbook: { worksheets: { add(name: string): unknown } } }) => {
      context.workbook.worksheets.add("Waited");
    };
    await expect(bench.Excel.run(write)).rejects.toMatchObject({ code: "InvalidOperationInCellEditMode" });
    await bench.Excel.run({ delayForCellEdit: true }, write);
    expect(sheetNames()).toEqual(["Sheet1", "Waited"]);
  });
});
