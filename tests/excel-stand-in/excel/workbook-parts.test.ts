import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { WorkbookExtras } from "../../../src/excel-stand-in/excel/sheet-extras";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() => bench.load({ id: "book", sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } }));

/** A small batch sheet: two gravities with names, a table of malts with a share of the whole. */
const insertBatch = (name: string) =>
  bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.add(name);
    sheet.getRange("A1:B2").values = [
      ["Original", 1050],
      ["Final", 1010],
    ];
    sheet.names.add("og", sheet.getRange("B1"), "before the yeast");
    sheet.names.add("fg", "='" + name + "'!$B$2");
    sheet.getRange("B3").formulas = [["=GYLE.GAP(og,fg)"]];
    sheet.getRange("A6:C8").values = [
      ["Malt", "Mass", "Share"],
      ["Pale", 4, ""],
      ["Crystal", 1, ""],
    ];
    const table = sheet.tables.add("A6:C8", true);
    table.name = `Malts_${name.replace(/\W/gu, "_")}`;
    table.style = "TableStyleLight1";
    sheet.getRange("C7:C8").formulas = [["=[@Mass]/SUM([Mass])"], ["=[@Mass]/SUM([Mass])"]];
    await context.sync();
  });

describe("worksheets", () => {
  it("are listed, renamed, moved, hidden, coloured and deleted", async () => {
    await bench.Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const added = worksheets.add("Batch 1");
      Object.assign(added, { tabColor: "#AA5500", showGridlines: false, position: 0, name: "Pale Ale" });
      worksheets.add().visibility = "Hidden";
      worksheets.load("items/name,items/visibility");
      added.load("name,position,tabColor,showGridlines");
      const count = worksheets.getCount();
      const active = worksheets.getActiveWorksheet().load("name");
      await context.sync();
      expect(worksheets.items.map(({ name, visibility }) => [name, visibility])).toEqual([
        ["Pale Ale", "Visible"],
        ["Sheet1", "Visible"],
        ["Sheet2", "Hidden"],
      ]);
      expect([added.name, added.position, added.tabColor, added.showGridlines, count.value, active.name]).toEqual([
        "Pale Ale",
        0,
        "#AA5500",
        false,
        3,
        "Sheet1",
      ]);
      added.delete();
      worksheets.load("items/name");
      await context.sync();
      expect(worksheets.items.map(({ name }) => name)).toEqual(["Sheet1", "Sheet2"]);
    });
  });

  it("refuse a name that is taken or impossible", async () => {
    await expect(
      bench.Excel.run(async (context) => {
        context.workbook.worksheets.add("sheet1");
      }),
    ).rejects.toMatchObject({ code: "ItemAlreadyExists" });
    await expect(
      bench.Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Sheet1").name = "a/b";
      }),
    ).rejects.toMatchObject({ code: "InvalidArgument" });
  });

  it("copied keep names, tables and formulas of their own", async () => {
    await insertBatch("Batch 1");
    await bench.Excel.run(async (context) => {
      const original = context.workbook.worksheets.getItem("Batch 1");
      original.pageLayout.orientation = "Landscape";
      const copy = original.copy("End").load("name,position");
      copy.getRange("B1").values = [[1070]];
      copy.getRange("B7").values = [[9]];
      copy.pageLayout.load("orientation");
      const [copied, kept] = [copy, original].map((sheet) => sheet.getRange("B3:C7").load("values"));
      context.workbook.tables.load("items/name");
      await context.sync();
      expect([copy.name, copy.position, copy.pageLayout.orientation]).toEqual(["Batch 1 (2)", 2, "Landscape"]);
      expect([copied!.values[0]![0], copied!.values[4]![1]]).toEqual([60, 0.9]);
      expect([kept!.values[0]![0], kept!.values[4]![1]]).toEqual([40, 0.8]);
      expect(context.workbook.tables.items.map(({ name }) => name)).toEqual(["Malts_Batch_1", "Malts_Batch_12"]);
    });
  });
});

describe("names", () => {
  it("live on a sheet or in the workbook", async () => {
    await insertBatch("Batch 1");
    await bench.Excel.run(async (context) => {
      const { names, worksheets } = context.workbook;
      names.add("club", '="Quillmarsh"');
      names.add("rate", "=0.25").visible = false;
      const own = worksheets.getItem("Batch 1").names.load("items/name,items/formula,items/scope,items/type,items/comment");
      names.load("items/name,items/value,items/type,items/visible");
      const missing = names.getItemOrNullObject("og");
      const byName = worksheets.getItem("Batch 1").getRange("og").load("address");
      const cells = own.getItem("FG").getRange().load("address,values");
      await context.sync();
      expect(own.items.map(({ name, formula, scope, type, comment }) => [name, formula, scope, type, comment])).toEqual([
        ["fg", "='Batch 1'!$B$2", "Worksheet", "Range", ""],
        ["og", "='Batch 1'!$B$1", "Worksheet", "Range", "before the yeast"],
      ]);
      expect(names.items.map(({ name, value, type, visible }) => [name, value, type, visible])).toEqual([
        ["club", "Quillmarsh", "String", true],
        ["rate", 0.25, "Double", false],
      ]);
      expect([missing.isNullObject, byName.address, cells.address, cells.values]).toEqual([true, "'Batch 1'!B1", "'Batch 1'!B2", [[1010]]]);
      own.getItem("og").formula = "='Batch 1'!$B$2";
      names.getItem("club").delete();
      const gap = worksheets.getItem("Batch 1").getRange("B3").load("values");
      const left = names.getCount();
      await context.sync();
      expect([gap.values, left.value]).toEqual([[[0]], 1]);
    });
  });

  it.each(["OG1", "R", "1st", "two words", "r1c1"])("refuse %s", async (name) => {
    await expect(
      bench.Excel.run(async (context) => {
        context.workbook.names.add(name, "=1");
      }),
    ).rejects.toMatchObject({ code: "InvalidArgument" });
  });

  it("refuse a second of the same spelling in one scope only", async () => {
    await insertBatch("Batch 1");
    await insertBatch("Batch 2");
    const again = bench.Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Batch 2").names.add("OG", "=1");
    });
    await expect(again).rejects.toMatchObject({ code: "ItemAlreadyExists" });
  });
});

describe("tables", () => {
  it("have ranges, columns and looks, and calculate by row", async () => {
    await insertBatch("Batch 1");
    await bench.Excel.run(async (context) => {
      const table = context.workbook.tables.getItem("malts_batch_1");
      table.showBandedRows = false;
      table.load("name,style,showBandedRows");
      const ranges = [table.getRange(), table.getDataBodyRange()].map((range) => range.load("address,values"));
      table.columns.load("items/name");
      const formulas = table.getDataBodyRange().load("formulas");
      await context.sync();
      expect([table.name, table.style, table.showBandedRows]).toEqual(["Malts_Batch_1", "TableStyleLight1", false]);
      expect(ranges.map(({ address }) => address)).toEqual(["A6:C8", "A7:C8"].map((cells) => `'Batch 1'!${cells}`));
      expect([table.columns.items.map(({ name }) => name), ranges[1]!.values]).toEqual([
        ["Malt", "Mass", "Share"],
        [
          ["Pale", 4, 0.8],
          ["Crystal", 1, 0.2],
        ],
      ]);
      expect(formulas.formulas[0]![2]).toBe("=Malts_Batch_1[[#This Row],[Mass]]/SUM(Malts_Batch_1[Mass])");
    });
  });

  it("keep a totals row out of their column references", async () => {
    await insertBatch("Batch 1");
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Batch 1");
      const table = sheet.tables.getItem("Malts_Batch_1");
      table.showTotals = true;
      sheet.getRange("B9").formulas = [["=SUM(Malts_Batch_1[Mass])"]];
      const whole = table.getRange().load("address");
      const totals = sheet.getRange("A9:C9").load("values");
      await context.sync();
      expect([whole.address, totals.values[0]![1]]).toEqual(["'Batch 1'!A6:C9", 5]);
      expect(bench.engine.circular.cells()).toEqual([]);
    });
  });

  it("refuse to overlap", async () => {
    await insertBatch("Batch 1");
    await expect(
      bench.Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").tables.add("C8:D9", true);
      }),
    ).rejects.toMatchObject({ code: "InvalidArgument" });
  });
});

describe("protection", () => {
  it("refuses writes to locked cells only, and formats of all", async () => {
    await insertBatch("Batch 1");
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Batch 1");
      sheet.getRange("B1").format.protection.locked = false;
      sheet.protection.protect({ allowFormatCells: false });
      sheet.protection.load("protected");
      sheet.getRange("B1").values = [[1060]];
      const result = sheet.getRange("B3").load("values");
      await context.sync();
      expect([sheet.protection.protected, result.values]).toEqual([true, [[50]]]);
      for (const forbidden of [
        () => {
          sheet.getRange("B1:B2").values = [[1], [2]];
        },
        () => {
          sheet.getRange("B1").format.fill.color = "red";
        },
        () => {
          sheet.getRange("2:2").insert("Down");
        },
      ]) {
        forbidden();
        await expect(context.sync()).rejects.toMatchObject({ code: "AccessDenied" });
      }
      sheet.protection.unprotect();
      sheet.getRange("B2").values = [[1000]];
      await context.sync();
    });
    await bench.calculate();
    expect(bench.valueAt("Batch 1", "B3")).toBe(60);
  });
});

it("protection holds a person at the grid as well", async () => {
  await insertBatch("Batch 1");
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Batch 1");
    sheet.getRange("B1").format.protection.locked = false;
    sheet.protection.protect();
  });
  const sheet = bench.univerAPI.getActiveWorkbook()!.getSheetByName("Batch 1")!;
  const typeInto = (address: string, value: number) => {
    const range = sheet.getRange(address).getRange();
    return bench.univerAPI.executeCommand("sheet.command.set-range-values", {
      unitId: "book",
      subUnitId: sheet.getSheetId(),
      range,
      value: { v: value },
    });
  };
  expect([
    await typeInto("B1", 1090),
    await typeInto("B2", 1),
    await bench.univerAPI.executeCommand("sheet.command.clear-selection-content", {
      unitId: "book",
      subUnitId: sheet.getSheetId(),
      ranges: [sheet.getRange("A1:B2").getRange()],
    }),
  ]).toEqual([true, false, false]);
  await bench.calculate();
  expect([bench.valueAt("Batch 1", "B1"), bench.valueAt("Batch 1", "B2"), bench.valueAt("Batch 1", "B3")]).toEqual([1090, 1010, 80]);
});

describe("notes, frozen panes, page, charts", () => {
  it("deletes the note that it is asked to, not the selected cell's", async () => {
    await insertBatch("Batch 1");
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Batch 1");
      sheet.notes.add("B3", "stays");
      sheet.notes.add("B4", "goes");
      sheet.getRange("B3").select();
      await context.sync();
      sheet.notes.getItem("B4").delete();
      const [kept, gone] = [sheet.notes.getItemOrNullObject("B3").load("content"), sheet.notes.getItemOrNullObject("B4").load("content")];
      await context.sync();
      expect([kept.content, gone.isNullObject]).toEqual(["stays", true]);
    });
  });

  it("are kept in the snapshot and come back with it", async () => {
    await insertBatch("Batch 1");
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Batch 1");
      sheet.notes.add("B3", "Points of gravity lost");
      sheet.freezePanes.freezeRows(2);
      const { pageLayout } = sheet;
      Object.assign(pageLayout, {
        orientation: "Portrait",
        paperSize: "A4",
        zoom: { horizontalFitToPages: 1, verticalFitToPages: 2 },
        leftMargin: 36,
        centerHorizontally: true,
      });
      pageLayout.headersFooters.defaultForAllPages.rightFooter = "&P / &N";
      pageLayout.setPrintArea("A1:C40");
      sheet.horizontalPageBreaks.add("A21");
      const chart = sheet.charts.add("XYScatterLines", sheet.getRange("B6:C8"), "Columns");
      chart.name = "Shares";
      chart.title.text = "Shares by mass";
      chart.setPosition("E2", "H12");
      chart.axes.valueAxis.minimum = 0.2;
      chart.axes.valueAxis.maximum = 1;
      chart.axes.categoryAxis.title.text = "Mass, kg";
      const extra = chart.series.add("Twice");
      extra.setXAxisValues(sheet.getRange("B7:B8"));
      extra.setValues(sheet.getRange("C7:C8"));
      context.workbook.properties.title = "Quillmarsh";
      context.workbook.settings.add("units", "metric");
      await context.sync();
    });
    await bench.load(bench.snapshot());
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Batch 1");
      const note = sheet.notes.getItem("B3").load("content");
      const frozen = sheet.freezePanes.getLocationOrNullObject().load("rowCount");
      const layout = sheet.pageLayout.load("paperSize,zoom,leftMargin,rightMargin");
      const chart = sheet.charts.getItem("Shares").load("chartType,title/text,left,width,series/items/name");
      context.workbook.properties.load("title");
      await context.sync();
      expect([
        note.content,
        frozen.rowCount,
        layout.paperSize,
        layout.zoom.verticalFitToPages,
        layout.leftMargin,
        layout.rightMargin,
      ]).toEqual(["Points of gravity lost", 2, "A4", 2, 36, 50.4]);
      expect([chart.chartType, chart.title.text, context.workbook.properties.title]).toEqual([
        "XYScatterLines",
        "Shares by mass",
        "Quillmarsh",
      ]);
      expect(chart.width).toBeGreaterThan(0);
    });
    const sheetId = bench.univerAPI.getActiveWorkbook()!.getSheetByName("Batch 1")!.getSheetId();
    const [chart] = bench.chartsOf(sheetId);
    expect(chart?.series.map(({ name, values, xValues }) => [name, values?.row, values?.column, xValues?.column])).toEqual([
      ["Share", 6, 2, 1],
      ["Twice", 6, 2, 1],
    ]);
    expect(chart?.anchor).toEqual({ startCell: "E2", endCell: "H12" });
    expect(chart?.axes.value).toMatchObject({ minimum: 0.2, maximum: 1 });
    const saved = JSON.parse(bench.snapshot().resources!.find(({ name }) => name === "GYLE_SHEET_EXTRAS")!.data) as WorkbookExtras;
    expect(saved.settings).toEqual({ units: "metric" });
    expect(saved.sheets[sheetId]).toMatchObject({
      printArea: "A1:C40",
      horizontalPageBreaks: [20],
      pageLayout: { headerFooter: { rightFooter: "&P / &N" } },
    });
  });
});

describe("looks of a chart", () => {
  it("are kept for each series: type, line, marks, axis, place in the legend; sizes of its letters", async () => {
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      sheet.getRange("H1:H3").values = [[1], [2], [3]];
      const chart = sheet.charts.add("XYScatter", sheet.getRange("H1:H3"), "Columns");
      chart.name = "Looks";
      const edge = chart.series.add("Edge");
      edge.setValues(sheet.getRange("H1:H3"));
      edge.chartType = "XYScatterLinesNoMarkers";
      Object.assign(edge.format.line, { color: "#0072B2", lineStyle: "Dash", weight: 1 });
      edge.axisGroup = "Secondary";
      Object.assign(chart.series.getItemAt(0), { markerStyle: "Diamond", markerSize: 7, markerBackgroundColor: "#D55E00" });
      chart.legend.legendEntries.getItemAt(1).visible = false;
      const second = chart.axes.getItem("Value", "Secondary");
      second.title.text = "Degrees";
      second.numberFormat = "0";
      chart.format.font.size = 9;
      chart.title.format.font.size = 12;
      await context.sync();
      const read = chart.series.load("items/chartType,items/markerStyle,items/axisGroup");
      second.load("numberFormat");
      await context.sync();
      expect(read.items.map(({ chartType, markerStyle, axisGroup }) => [chartType, markerStyle, axisGroup])).toEqual([
        ["XYScatter", "Diamond", "Primary"],
        ["XYScatterLinesNoMarkers", "Automatic", "Secondary"],
      ]);
      expect(second.numberFormat).toBe("0");
    });
    const chart = bench.chartsOf("one").find(({ name }) => name === "Looks");
    expect(chart).toMatchObject({ fontSize: 9, titleSize: 12, axes: { secondary: { title: "Degrees", numberFormat: "0" } } });
    expect(chart?.series[0]).toMatchObject({ markerStyle: "Diamond", markerSize: 7, color: "#D55E00" });
    expect(chart?.series[1]).toMatchObject({
      type: "XYScatterLinesNoMarkers",
      lineStyle: "Dash",
      lineWeight: 1,
      color: "#0072B2",
      secondary: true,
      unlisted: true,
    });
  });

  it("that the bench cannot draw, and axes that are not there, are refused", async () => {
    const attempt = (act: (chart: Excel.Chart) => unknown) =>
      bench.Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Sheet1");
        act(sheet.charts.add("XYScatter", sheet.getRange("H1:H3"), "Columns") as unknown as Excel.Chart);
        await context.sync();
      });
    await expect(
      attempt((chart) => {
        chart.series.getItemAt(0).chartType = "ColumnClustered";
      }),
    ).rejects.toThrow("draws no ColumnClustered");
    await expect(
      attempt((chart) => {
        chart.axes.getItem("Value", "Secondary").numberFormat = "0";
      }),
    ).rejects.toThrow("No series stands on a second axis");
    await expect(
      attempt((chart) => {
        chart.legend.legendEntries.getItemAt(4).visible = false;
      }),
    ).rejects.toThrow("doesn't exist");
  });
});

describe("events", () => {
  it("tell of entries, selections and sheets after the sync that adds the handler, until it is removed", async () => {
    const heard: string[] = [];
    await bench.Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.onChanged.add(async ({ address }) => {
        heard.push(`changed ${address}`);
      });
      worksheets.onActivated.add(async ({ worksheetId }) => {
        heard.push(`activated ${worksheetId}`);
      });
      const selection = context.workbook.onSelectionChanged.add(async () => {
        heard.push("selected");
      });
      await context.sync();
      const sheet = worksheets.getItem("Sheet1");
      sheet.getRange("B2:C2").formulas = [[1, "=B2*2"]];
      sheet.getRange("B3").format.fill.color = "#EEEEEE";
      sheet.getRange("D4").select();
      const [selected, active] = [context.workbook.getSelectedRange().load("address"), context.workbook.getActiveCell().load("address")];
      await context.sync();
      expect([selected.address, active.address]).toEqual(["Sheet1!D4", "Sheet1!D4"]);
      expect(heard).toContain("changed B2:C2");
      expect(heard).toContain("selected");
      expect(heard.filter((event) => event.startsWith("changed"))).toHaveLength(1);
      await bench.univerAPI.executeCommand("sheet.command.set-range-values", {
        unitId: "book",
        subUnitId: "one",
        range: { startRow: 4, endRow: 4, startColumn: 0, endColumn: 0 },
        value: { v: 1 },
      });
      await Promise.resolve();
      expect(heard).toContain("changed A5");
      selection.remove();
      await context.sync();
      const before = heard.length;
      sheet.getRange("A1").select();
      await context.sync();
      expect(heard.slice(before)).not.toContain("selected");
    });
  });
});
