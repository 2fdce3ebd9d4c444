import { afterAll, beforeAll, beforeEach, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() => bench.load({ id: "book", sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } }));

/** A sheet with everything that a batch sheet has. */
async function fill(): Promise<void> {
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    sheet.getRange("A1:B3").formulas = [
      ["Malt", "Mass"],
      ["Pale", 4],
      ["Dark", 1],
    ];
    const table = sheet.tables.add("A1:B3", true);
    table.name = "Malts";
    table.style = "TableStyleLight9";
    table.showFilterButton = false;
    sheet.names.add("total", "=Sheet1!$B$6");
    sheet.getRange("B6:B7").formulas = [["=SUM(Malts[Mass])"], ["=total*2"]];
    sheet.getRange("B2").dataValidation.rule = { decimal: { formula1: 0, formula2: 50, operator: "Between" } };
    sheet.getRange("B2:B3").conditionalFormats.add("Custom").custom.rule.formula = "=B2>3";
    sheet.getRange("A1:B1").format.fill.color = "#DDCCAA";
    sheet.getRange("A1:B1").format.font.bold = true;
    sheet.getRange("B:B").format.columnWidth = 90;
    sheet.getRange("D4:E4").merge();
    sheet.notes.add("B6", "All the malt");
    sheet.freezePanes.freezeRows(1);
    sheet.pageLayout.setPrintArea("A1:E20");
    const chart = sheet.charts.add("ColumnClustered", sheet.getRange("A1:B3"), "Columns");
    chart.name = "Bill";
    chart.setPosition("G1", "K10");
    sheet.tabColor = "#884400";
    await context.sync();
  });
}

it("carry everything along, under names of their own", async () => {
  await fill();
  await bench.Excel.run(async (context) => {
    const original = context.workbook.worksheets.getItem("Sheet1");
    const last = context.workbook.worksheets.add("Last");
    const copy = original.copy("After", last as unknown as Excel.Worksheet).load("name,position,tabColor,visibility,id");
    const formulas = copy.getRange("B6:B7").load("formulas,values");
    copy.tables.load("items/name,items/style,items/showFilterButton");
    copy.names.load("items/name,items/formula,items/scope");
    const validation = copy.getRange("B2").dataValidation.load("rule");
    const formats = copy.getRange("B2:B3").conditionalFormats.load("items/type");
    const rule = formats.getItemAt(0).custom.rule.load("formula");
    const head = copy.getRange("A1").load("format/fill/color,format/font/bold");
    const width = copy.getRange("B1").load("format/columnWidth");
    copy.notes.load("items/content");
    const frozen = copy.freezePanes.getLocationOrNullObject().load("address");
    const chart = copy.charts.getItem("Bill").load("chartType,series/items/name");
    await context.sync();
    expect([copy.name, copy.position, copy.tabColor, copy.visibility]).toEqual(["Sheet1 (2)", 2, "#884400", "Visible"]);
    expect(copy.tables.items.map(({ name, style, showFilterButton }) => [name, style, showFilterButton])).toEqual([
      ["Malts2", "TableStyleLight9", false],
    ]);
    expect(formulas.formulas).toEqual([["=SUM(Malts2[Mass])"], ["=total*2"]]);
    expect(formulas.values).toEqual([[5], [10]]);
    expect(copy.names.items.map(({ name, formula, scope }) => [name, formula, scope])).toEqual([
      ["total", "='Sheet1 (2)'!$B$6", "Worksheet"],
    ]);
    expect(validation.rule.decimal).toMatchObject({ formula1: "0", formula2: "50", operator: "Between" });
    expect([formats.items.map(({ type }) => type), rule.formula]).toEqual([["Custom"], "=B2>3"]);
    expect([head.format.fill.color, head.format.font.bold, width.format.columnWidth]).toEqual(["#DDCCAA", true, 90]);
    expect(copy.notes.items.map(({ content }) => content)).toEqual(["All the malt"]);
    expect([frozen.address.split("!")[1], chart.chartType]).toEqual(["1:1", "ColumnClustered"]);
    // The copy's chart shows the copy's cells.
    expect(bench.chartsOf(copy.id)[0]?.series[0]?.values?.sheetId).toBe(copy.id);
    // And what is typed into the copy stays there.
    copy.getRange("B2").values = [[40]];
    const totals = [copy, original].map((sheet) => sheet.getRange("B7").load("values"));
    await context.sync();
    expect(totals.map(({ values }) => values)).toEqual([[[82]], [[10]]]);
  });
});

it("leave the original as it was when the copy is deleted", async () => {
  await fill();
  await bench.calculate();
  const before = JSON.stringify(bench.snapshot().sheets["one"]);
  await bench.Excel.run(async (context) => {
    const copy = context.workbook.worksheets.getItem("Sheet1").copy("Beginning");
    await context.sync();
    copy.delete();
    await context.sync();
    const names = context.workbook.worksheets.getItem("Sheet1").names.load("items/name");
    const notes = context.workbook.notes.getCount();
    await context.sync();
    expect([names.items.map(({ name }) => name), notes.value]).toEqual([["total"], 1]);
  });
  await bench.calculate();
  expect(JSON.stringify(bench.snapshot().sheets["one"])).toBe(before);
});
