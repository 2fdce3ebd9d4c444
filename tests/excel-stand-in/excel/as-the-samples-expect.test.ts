import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { BenchContext } from "../support/member-table";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

/**
 * Habits of Microsoft's own samples for Excel (github.com/OfficeDev/office-js-snippets, samples/excel), which say what Excel does
 * beyond its documentation: they delete null objects, count collections, and load "*" or "no-properties-needed".
 */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(async () => {
  await bench.load({
    id: `book-${crypto.randomUUID()}`,
    sheetOrder: ["one"],
    sheets: { one: { id: "one", name: "Sheet1" } },
  });
  await bench.Excel.run(async (context) => {
    const sheet = sheetOf(context);
    sheet.getRange("A1:B2").values = [
      ["Malt", "Mass"],
      ["Pale", 4],
    ];
    sheet.tables.add("A1:B2", true).name = "Bill";
    sheet.names.add("total", "=Sheet1!$B$2");
    sheet.charts.add("Line", sheet.getRange("A1:B2"), "Columns");
    await context.sync();
  });
});

const sheetOf = (context: BenchContext) => context.workbook.worksheets.getItem("Sheet1");

describe("a null object", () => {
  const nowhere: [string, (context: BenchContext) => { delete(): void }][] = [
    ["worksheet", (context) => context.workbook.worksheets.getItemOrNullObject("Sample")],
    ["table", (context) => context.workbook.tables.getItemOrNullObject("Sample")],
    ["name", (context) => sheetOf(context).names.getItemOrNullObject("Sample")],
    ["chart", (context) => sheetOf(context).charts.getItemOrNullObject("Sample")],
    ["note", (context) => sheetOf(context).notes.getItemOrNullObject("C9")],
    ["setting", (context) => context.workbook.settings.getItemOrNullObject("Sample")],
  ];

  it.each(nowhere)("takes delete() and does nothing: %s", async (_what, find) => {
    await bench.Excel.run(async (context) => {
      find(context).delete();
      sheetOf(context).getRange("D1").values = [["done"]];
      await context.sync();
    });
    expect(bench.valueAt("Sheet1", "D1")).toBe("done");
  });

  it("is told from an object that must be there", async () => {
    const attempt = bench.Excel.run(async (context) => context.workbook.worksheets.getItem("Sample").delete());
    await expect(attempt).rejects.toMatchObject({ code: "ItemNotFound" });
  });
});

describe("load", () => {
  it.each(["*", "", undefined])("of %j reads every property", async (names) => {
    await bench.Excel.run(async (context) => {
      const range = sheetOf(context).getRange("A1:B2").load(names);
      await context.sync();
      expect([range.address, range.rowCount, range.values[1]]).toEqual(["Sheet1!A1:B2", 2, ["Pale", 4]]);
    });
  });

  it.each(["items", "items/*", "*", undefined])("of %j in a collection reads every property of its items", async (names) => {
    await bench.Excel.run(async (context) => {
      const { tables } = sheetOf(context);
      tables.load(names);
      await context.sync();
      expect(tables.items.map(({ name, showHeaders }) => [name, showHeaders])).toEqual([["Bill", true]]);
    });
  });

  it("of no-properties-needed makes the items, and reads none of their properties", async () => {
    await bench.Excel.run(async (context) => {
      const { tables } = sheetOf(context);
      const range = sheetOf(context).getRange("A1").load("no-properties-needed");
      tables.load("no-properties-needed");
      await context.sync();
      expect(() => range.address).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      expect(() => tables.items[0]!.name).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      tables.items[0]!.name = "Grist";
      await context.sync();
    });
    await bench.Excel.run(async (context) => {
      const grist = context.workbook.tables.getItem("Grist").load("name");
      await context.sync();
      expect(grist.name).toBe("Grist");
    });
  });

  it("of a property that is not there is still refused", async () => {
    await bench.Excel.run(async (context) => {
      expect(() => sheetOf(context).getRange("A1").load("valeus")).toThrow(expect.objectContaining({ code: "InvalidArgument" }));
    });
  });

  it("of count tells how many there are, without items", async () => {
    await bench.Excel.run(async (context) => {
      const { tables, charts } = sheetOf(context);
      const bill = tables.getItem("Bill");
      const counted = [tables, charts, bill.columns, charts.getItemAt(0).series];
      for (const one of counted) one.load("count");
      tables.load("items/name");
      await context.sync();
      expect(counted.map(({ count }) => count)).toEqual([1, 1, 2, 1]);
      expect(tables.items.map(({ name }) => name)).toEqual(["Bill"]);
      expect(() => charts.items).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
    });
  });
});
