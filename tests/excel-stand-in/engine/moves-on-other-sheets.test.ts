import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Context } from "../../../src/excel-stand-in/excel/context";
import type { Worksheet } from "../../../src/excel-stand-in/excel/worksheet";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

/**
 * What Excel makes of references when cells move, from its help ("The #REF! error", "Insert or delete rows and columns"), whichever sheet
 * is in front; Sheet1 is, the rows are deleted on Data.
 */
describe("cells that move on a sheet that is not in front", () => {
  let bench: HeadlessBench;
  beforeAll(async () => {
    bench = await openTestBench();
  }, START_TIMEOUT);
  afterAll(() => bench.dispose());
  beforeEach(async () => {
    const sheet = (id: string, name: string) => ({ id, name, cellData: {}, rowCount: 40, columnCount: 12 });
    await bench.load({
      id: `moves-${Math.random()}`,
      sheetOrder: ["one", "data"],
      sheets: { one: sheet("one", "Sheet1"), data: sheet("data", "Data") },
    } as never);
    await enter(bench, { A1: 1, A2: 2, A3: 3, A4: 4, B1: 10, B2: 20 }, "Data");
    await enter(bench, { A1: 7, A2: "=Data!A2*2", B1: "=Data!A3", B2: "=SUM(Data!A1:A4)", C1: '=Data!A1&"Data!A2"', C2: "=A1+Data!B2" });
  });

  const formulas = () => {
    const sheet = bench.univerAPI.getActiveWorkbook()!.getSheetByName("Sheet1")!;
    return ["A2", "B1", "B2", "C1", "C2"].map((cell) => sheet.getRange(cell).getFormula());
  };
  const values = () => ["A1", "A2", "B1", "B2", "C2"].map((cell) => bench.valueAt("Sheet1", cell));
  const change = async (work: (data: Worksheet) => void) => {
    await bench.Excel.run(async (context) => {
      work(context.workbook.worksheets.getItem("Data"));
      await context.sync();
    });
    await bench.calculate();
  };
  const before = ["=Data!A2*2", "=Data!A3", "=SUM(Data!A1:A4)", '=Data!A1&"Data!A2"', "=A1+Data!B2"];

  it("a deleted row takes its cells out of formulas, and undo puts them back", async () => {
    await change((data) => data.getRange("2:2").delete("Up"));
    expect(formulas()).toEqual(["=#REF!*2", "=Data!A2", "=SUM(Data!A1:A3)", '=Data!A1&"Data!A2"', "=A1+#REF!"]);
    expect(values()).toEqual([7, "#REF!", 3, 8, "#REF!"]);
    await bench.univerAPI.undo();
    await bench.calculate();
    expect(formulas()).toEqual(before);
    expect(values()).toEqual([7, 4, 3, 10, 27]);
  });

  it("a deleted column is one of the sheet that was meant", async () => {
    await change((data) => data.getRange("A:A").delete("Left"));
    expect(formulas()).toEqual(["=#REF!*2", "=#REF!", "=SUM(#REF!)", '=#REF!&"Data!A2"', "=A1+Data!A2"]);
    expect(values()).toEqual([7, "#REF!", "#REF!", "#REF!", 27]);
    expect(bench.valueAt("Data", "A1")).toBe(10);
  });

  it("deleted and inserted cells move those of the sheet that was meant", async () => {
    await change((data) => data.getRange("A2:A2").delete("Up"));
    expect(formulas()).toEqual(["=#REF!*2", "=Data!A2", "=SUM(Data!A1:A3)", '=Data!A1&"Data!A2"', "=A1+Data!B2"]);
    await change((data) => data.getRange("A1:A1").insert("Down"));
    expect(formulas()).toEqual(["=#REF!*2", "=Data!A3", "=SUM(Data!A2:A4)", '=Data!A2&"Data!A2"', "=A1+Data!B2"]);
    await change((data) => data.getRange("A3:A3").insert("Right"));
    expect(formulas()).toEqual(["=#REF!*2", "=Data!B3", "=SUM(Data!A2:A4)", '=Data!A2&"Data!A2"', "=A1+Data!B2"]);
    await change((data) => data.getRange("A3:A3").delete("Left"));
    expect(formulas()[1]).toBe("=Data!A3");
    expect(values()).toEqual([7, "#REF!", 3, 8, 27]);
  });

  it("another name of a sheet or a table, and a sheet that goes, are followed by the formulas that read it, and by no others", async () => {
    const later = async (work: (context: Context) => void) => {
      await bench.Excel.run(async (context) => {
        work(context);
        await context.sync();
      });
      await bench.calculate();
    };
    await change((data) => void (data.name = "Jo's data"));
    const quoted = (name: string) => before.map((formula) => formula.replaceAll(/Data!(?=[AB])(?![^"]*"$)/gu, `${name}!`));
    expect(formulas()).toEqual(quoted("'Jo''s data'"));
    expect(values()).toEqual([7, 4, 3, 10, 27]);
    await later((context) => void (context.workbook.worksheets.getItem("Jo's data").name = "Data"));
    expect(formulas()).toEqual(before);
    await later((context) => {
      const data = context.workbook.worksheets.getItem("Data");
      data.getRange("D1:D3").values = [["Mass"], [4], [1]];
      data.tables.add("D1:D3", true).name = "Bill";
      const one = context.workbook.worksheets.getItem("Sheet1");
      one.getRange("A2:B2").formulas = [["=SUM(Bill[Mass])", '=MAX(Bill[Mass])&"Bill"']];
    });
    await later((context) => void (context.workbook.tables.getItem("Bill").name = "Grist"));
    expect(formulas().filter((_, index) => index !== 1 && index < 3)).toEqual(["=SUM(Grist[Mass])", '=MAX(Grist[Mass])&"Bill"']);
    expect(bench.valueAt("Sheet1", "A2")).toBe(5);
    await later((context) => context.workbook.worksheets.getItem("Data").delete());
    expect(formulas()[1]).toBe("=#REF!");
    expect(bench.valueAt("Sheet1", "A1")).toBe(7);
  });
});
