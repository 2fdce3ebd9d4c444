import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() => bench.load({ id: "book", sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } }));

describe("values are taken as if typed", () => {
  it.each([
    ["a number in a text", "1.050", 1.05, "Double"],
    ["a logical value in a text", "true", true, "Boolean"],
    ["a text behind an apostrophe", "'007", "007", "String"],
    ["a date", "2026-01-16", 46038, "Double"],
    ["a text", "1.050 or so", "1.050 or so", "String"],
    ["an empty text", "", "", "Empty"],
    ["a formula", "=1/0", "#DIV/0!", "Error"],
  ])("%s", async (_what, typed, value, type) => {
    await bench.Excel.run(async (context) => {
      const cell = context.workbook.worksheets.getItem("Sheet1").getRange("A1");
      cell.values = [[typed]];
      cell.load("values,valueTypes");
      await context.sync();
      expect([cell.values[0]![0], cell.valueTypes[0]![0]]).toEqual([value, type]);
    });
  });

  it("null leaves a cell as it is, one value fills a range, text format keeps texts", async () => {
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      sheet.getRange("A1:C1").values = [[1, 2, 3]];
      sheet.getRange("A1:C1").values = [[null, 20, null]];
      sheet.getRange("A2:C2").values = "same" as never;
      sheet.getRange("A3").numberFormat = [["@"]];
      sheet.getRange("A3").values = [["1.050"]];
      const range = sheet.getRange("A1:C3").load("values");
      await context.sync();
      expect(range.values).toEqual([
        [1, 20, 3],
        ["same", "same", "same"],
        ["1.050", "", ""],
      ]);
    });
  });
});

it("shows texts by their number format", async () => {
  await bench.Excel.run(async (context) => {
    const range = context.workbook.worksheets.getItem("Sheet1").getRange("A1:D1");
    range.values = [[1.05, 0.754, 46038, true]];
    range.numberFormat = [["0.000", "0.0%", "yyyy-mm-dd", "General"]];
    range.load("text,numberFormat");
    await context.sync();
    expect(range.text).toEqual([["1.050", "75.4%", "2026-01-16", "TRUE"]]);
    expect(range.numberFormat).toEqual([["0.000", "0.0%", "yyyy-mm-dd", "General"]]);
  });
});

it("finds the cell whose formula spills into another, and tells an empty text from an empty cell", async () => {
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    sheet.getRange("B2:B3").formulas = [["=GYLE.STEPS(3)"], [""]];
    sheet.getRange("F1").formulas = [['=""']];
    await context.sync();
    await bench.calculate();
    const parent = sheet.getRange("C4").getSpillParentOrNullObject().load("address");
    const own = sheet.getRange("B2").getSpillParentOrNullObject().load("address");
    const none = sheet.getRange("E2").getSpillParentOrNullObject();
    const types = sheet.getRange("F1:G1").load("valueTypes");
    await context.sync();
    expect([parent.address, own.address, none.isNullObject, types.valueTypes]).toEqual([
      "Sheet1!B2",
      "Sheet1!B2",
      true,
      [["String", "Empty"]],
    ]);
  });
});

it("reads spills, their extent and the used range with them", async () => {
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    sheet.getRange("B2").formulas = [["=GYLE.STEPS(3)"]];
    const whole = sheet.getRange("B2:D4").load("values");
    const extent = sheet.getRange("B2").getSpillingToRangeOrNullObject().load("address");
    const none = sheet.getRange("B3").getSpillingToRangeOrNullObject();
    const used = sheet.getUsedRangeOrNullObject(true).load("address");
    await context.sync();
    expect(whole.values).toEqual([
      ["step 1", 0, ""],
      ["step 2", 10, "#N/A"],
      ["step 3", 20, ""],
    ]);
    expect([extent.address, none.isNullObject, used.address]).toEqual(["Sheet1!B2:D4", true, "Sheet1!B2:D4"]);
  });
});

it("leads to its cells, none of them outside the sheet", async () => {
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    const ranges = [sheet.getRange("B2:C5").getCell(1, 1), sheet.getRange("2:5"), sheet.getRange("B:C")].map((range) =>
      range.load("address"),
    );
    await context.sync();
    expect(ranges.map((range) => range.address)).toEqual(["C3", "2:5", "B:C"].map((cells) => `Sheet1!${cells}`));
    sheet.getRange("B2").getCell(-5, 0).values = [[1]];
    await expect(context.sync()).rejects.toMatchObject({ code: "InvalidArgument" });
  });
});

it("sets and reads the looks of cells", async () => {
  await bench.Excel.run(async (context) => {
    const range = context.workbook.worksheets.getItem("Sheet1").getRange("A1:B2");
    Object.assign(range.format, {
      horizontalAlignment: "Center",
      verticalAlignment: "Top",
      wrapText: true,
      indentLevel: 2,
      columnWidth: 90,
      rowHeight: 30,
    });
    Object.assign(range.format.font, { bold: true, italic: true, color: "#aa5500", size: 14, name: "Georgia" });
    range.format.fill.color = "#EEEEEE";
    const bottom = range.format.borders.getItem("EdgeBottom");
    bottom.style = "Double";
    range.getCell(0, 0).format.fill.clear();
    await context.sync();
    const format =
      "format/horizontalAlignment,format/verticalAlignment,format/wrapText,format/indentLevel,format/columnWidth,format/rowHeight";
    range.load(`${format},format/fill/color,format/font/bold,format/font/color,format/font/size,format/font/name`);
    const lower = range.getCell(1, 0).format.borders.getItem("EdgeBottom").load("style");
    const upper = range.getCell(0, 0).format.borders.getItem("EdgeBottom").load("style");
    await context.sync();
    const { font, fill, horizontalAlignment, verticalAlignment, wrapText, indentLevel, columnWidth, rowHeight } = range.format;
    expect([horizontalAlignment, verticalAlignment, wrapText, indentLevel, columnWidth, rowHeight]).toEqual([
      "Center",
      "Top",
      true,
      2,
      90,
      30,
    ]);
    expect([font.bold, font.color, font.size, font.name]).toEqual([true, "#AA5500", 14, "Georgia"]);
    expect([fill.color, lower.style, upper.style]).toEqual([null, "Double", "None"]);
  });
});

it("clears contents, formats, or both", async () => {
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    const range = sheet.getRange("A1:A3");
    range.values = [[1], [2], [3]];
    range.format.font.bold = true;
    sheet.getRange("A1").clear("Contents");
    sheet.getRange("A2").clear("Formats");
    sheet.getRange("A3").clear();
    range.load("values");
    const bold = [0, 1, 2].map((row) => range.getCell(row, 0).format.font.load("bold"));
    await context.sync();
    expect([range.values, bold.map((font) => font.bold)]).toEqual([
      [[""], [2], [""]],
      [true, false, false],
    ]);
  });
});

it("inserts and deletes rows and cells, formulas follow", async () => {
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    sheet.getRange("A1:B2").formulas = [
      [1, "=A1*10"],
      [2, "=A2*10"],
    ];
    sheet.getRange("2:3").insert("Down");
    const inserted = sheet.getRange("A4:B4").load("values,formulas");
    await context.sync();
    expect([inserted.values, inserted.formulas]).toEqual([[[2, 20]], [[2, "=A4*10"]]]);
    sheet.getRange("A2:B3").delete("Up");
    const deleted = sheet.getRange("A2:B2").load("formulas");
    await context.sync();
    expect(deleted.formulas).toEqual([[2, "=A2*10"]]);
  });
});

it("makes the sheet larger when writing beyond it", async () => {
  await bench.Excel.run(async (context) => {
    const far = context.workbook.worksheets.getItem("Sheet1").getRange("AZ2000");
    far.values = [["far"]];
    far.load("values,address");
    await context.sync();
    expect([far.values, far.address]).toEqual([[["far"]], "Sheet1!AZ2000"]);
  });
});

it("keeps validation and conditional formats of a range", async () => {
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    const cell = sheet.getRange("A1");
    cell.dataValidation.rule = { decimal: { formula1: 1, formula2: 1.2, operator: "Between" } };
    cell.dataValidation.prompt = { showPrompt: true, title: "Gravity", message: "Between 1 and 1.2" };
    cell.dataValidation.errorAlert = { showAlert: true, style: "Warning", title: "Gravity", message: "Unusual" };
    sheet.getRange("A2").dataValidation.rule = { list: { inCellDropDown: true, source: "metric,US" } };
    const format = sheet.getRange("B1:B3").conditionalFormats.add("Custom");
    format.custom.rule.formula = "=$B1>5";
    format.custom.format.fill.color = "#FFCCCC";
    format.custom.format.font.bold = true;
    cell.dataValidation.load("rule,prompt,type");
    const list = sheet.getRange("A2").dataValidation.load("rule");
    const count = sheet.getRange("B2").conditionalFormats.getCount();
    await context.sync();
    expect(cell.dataValidation.rule).toEqual({ decimal: { formula1: "1", formula2: "1.2", operator: "Between" } });
    expect([cell.dataValidation.prompt.message, cell.dataValidation.type, list.rule.list?.source, count.value]).toEqual([
      "Between 1 and 1.2",
      "Decimal",
      "metric,US",
      1,
    ]);
    cell.dataValidation.clear();
    sheet.getRange("B1:B3").conditionalFormats.clearAll();
    const after = sheet.getRange("B2").conditionalFormats.getCount();
    cell.dataValidation.load("type");
    await context.sync();
    expect([cell.dataValidation.type, after.value]).toEqual(["None", 0]);
  });
  const resources = bench.snapshot().resources!;
  expect(resources.find(({ name }) => name === "SHEET_DATA_VALIDATION_PLUGIN")?.data).toContain("metric,US");
});

describe("ranges that lead to others", () => {
  it("from a spill to its cell and back, for single cells only", async () => {
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      sheet.getRange("B2").formulas = [["=GYLE.STEPS(3)"]];
      sheet.getRange("A9").formulas = [["=1+1"]];
      const into = sheet.getRange("B2").getSpillingToRangeOrNullObject().load("address");
      const [notSource, plain, block] = ["C3", "A9", "B2:C2"].map((cells) => sheet.getRange(cells).getSpillingToRangeOrNullObject());
      const parent = sheet.getRange("C4").getSpillParentOrNullObject().load("address");
      const own = sheet.getRange("B2").getSpillParentOrNullObject().load("address");
      const orphan = sheet.getRange("A9").getSpillParentOrNullObject();
      await context.sync();
      expect([into.address, notSource!.isNullObject, plain!.isNullObject, block!.isNullObject]).toEqual(["Sheet1!B2:D4", true, true, true]);
      expect([parent.address, own.address, orphan.isNullObject]).toEqual(["Sheet1!B2", "Sheet1!B2", true]);
    });
  });

  it("to the cells in use within them", async () => {
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      sheet.getRange("B3:C4").values = [
        [1, 2],
        [3, 4],
      ];
      sheet.getRange("H9").values = [[5]];
      const [inside, part] = ["A1:F20", "C:C"].map((cells) => sheet.getRange(cells).getUsedRange(true).load("address"));
      const empty = sheet.getRange("J1:K5").getUsedRangeOrNullObject(true);
      await context.sync();
      expect([inside!.address, part!.address, empty.isNullObject]).toEqual(["Sheet1!B3:C4", "Sheet1!C3:C4", true]);
    });
  });
});
