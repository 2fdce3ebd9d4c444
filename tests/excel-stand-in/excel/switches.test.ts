import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

/** How somebody's Excel can be worse than the best one: each way, and that it ends with its switch. */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(async () => {
  bench.host.behave({});
  await bench.load({ id: `book-${crypto.randomUUID()}`, sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } });
});

const write = (cell: string, formulas: string[][]) =>
  bench.Excel.run(async (context) => {
    context.workbook.worksheets.getItem("Sheet1").getRange(cell).formulas = formulas;
    await context.sync();
  });
const shown = async (...cells: string[]) => {
  await bench.calculate();
  return cells.map((cell) => bench.valueAt("Sheet1", cell));
};

describe("functions unknown", () => {
  it("formulas entered meanwhile stay #NAME? until they are entered again", async () => {
    await write("A1", [["=GYLE.GAP(5,2)"]]);
    bench.host.behave({ functionsUnknown: true });
    await write("A2:A4", [["=GYLE.GAP(5,1)"], ["=1+1"], ['=IFERROR(GYLE.GAP(5,1),"none")']]);
    await enter(bench, { A5: "=1+GYLE.GAP(5,1)" });
    expect(await shown("A1", "A2", "A3", "A4", "A5")).toEqual([3, "#NAME?", 2, "none", "#NAME?"]);

    bench.host.behave({});
    bench.univerAPI.getFormula().executeCalculation();
    expect(await shown("A1", "A2", "A5")).toEqual([3, "#NAME?", "#NAME?"]);
    await write("A2", [["=GYLE.GAP(5,1)"]]);
    await enter(bench, { A5: "=1+GYLE.GAP(5,1)" });
    expect(await shown("A2", "A4", "A5")).toEqual([4, "none", 5]);
  });

  it("the mark moves with the cell, and leaves what protection keeps in it", async () => {
    bench.host.behave({ functionsUnknown: true });
    await bench.Excel.run(async (context) => {
      const cell = context.workbook.worksheets.getItem("Sheet1").getRange("A2");
      cell.format.protection.locked = false;
      cell.formulas = [["=GYLE.GAP(5,1)"]];
      context.workbook.worksheets.getItem("Sheet1").getRange("2:2").insert("Down");
      await context.sync();
    });
    bench.host.behave({});
    await write("A1", [["=GYLE.GAP(5,1)"]]);
    expect(await shown("A1", "A3")).toEqual([4, "#NAME?"]);
    await write("A3", [["=GYLE.GAP(5,2)"]]);
    expect(await shown("A3")).toEqual([3]);
    await bench.Excel.run(async (context) => {
      const { protection } = context.workbook.worksheets.getItem("Sheet1").getRange("A3").format;
      protection.load("locked");
      await context.sync();
      expect(protection.locked).toBe(false);
    });
  });
});

describe("names", () => {
  /** What another pane reads: each name with its scope. */
  const listed = (where: "sheet" | "workbook") =>
    bench.Excel.run(async (context) => {
      const { names } = where === "sheet" ? context.workbook.worksheets.getItem("Sheet1") : context.workbook;
      names.load("items/name,items/scope,items/formula");
      await context.sync();
      return names.items.map(({ name, scope, formula }) => `${scope} ${name} ${String(formula)}`);
    });
  beforeEach(() =>
    bench.Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").names.add("og", "=Sheet1!$A$1");
      context.workbook.names.add("og", "=Sheet1!$B$1");
      context.workbook.names.add("paper", '="A4"');
      await context.sync();
    }),
  );
  const ofWorkbook = ["Workbook og =Sheet1!$B$1", 'Workbook paper ="A4"'];

  it("of the workbook are listed among a sheet's, and its own are still found by name", async () => {
    expect([await listed("sheet"), await listed("workbook")]).toEqual([["Worksheet og =Sheet1!$A$1"], ofWorkbook]);
    bench.host.behave({ workbookNamesOnSheets: true });
    expect([await listed("sheet"), await listed("workbook")]).toEqual([["Worksheet og =Sheet1!$A$1", ...ofWorkbook], ofWorkbook]);
    await bench.Excel.run(async (context) => {
      const og = context.workbook.worksheets.getItem("Sheet1").names.getItem("og").load("formula");
      await context.sync();
      expect(og.formula).toBe("=Sheet1!$A$1");
    });
  });

  it("of a sheet cannot be read while another workbook is in front, those of the workbook can", async () => {
    bench.host.behave({ otherWorkbookInFront: true });
    await expect(listed("sheet")).rejects.toMatchObject({ code: "InvalidSelection" });
    expect(await listed("workbook")).toEqual(ofWorkbook);
    bench.host.behave({});
    expect(await listed("sheet")).toEqual(["Worksheet og =Sheet1!$A$1"]);
  });
});

it("cells that a formula spills into answer with that formula", async () => {
  const formulas = () =>
    bench.Excel.run(async (context) => {
      const cells = context.workbook.worksheets.getItem("Sheet1").getRange("A1:B3").load("formulas,values");
      await context.sync();
      return [cells.formulas, cells.values];
    });
  await write("A1:B1", [["=SEQUENCE(2)", "beside"]]);
  const values = [
    [1, "beside"],
    [2, ""],
    ["", ""],
  ];
  expect(await formulas()).toEqual([[["=SEQUENCE(2)", "beside"], ...values.slice(1)], values]);
  bench.host.behave({ spilledFormulas: true });
  expect(await formulas()).toEqual([
    [
      ["=SEQUENCE(2)", "beside"],
      ["=SEQUENCE(2)", ""],
      ["", ""],
    ],
    values,
  ]);
});

describe("locale", () => {
  const seen = () =>
    bench.Excel.run(async (context) => {
      const cells = context.workbook.worksheets.getItem("Sheet1").getRange("A1:A4").load("formulas,formulasLocal,text,values");
      const { application } = context.workbook;
      application.load("decimalSeparator");
      await context.sync();
      return {
        formulas: cells.formulas.flat() as unknown[],
        local: cells.formulasLocal.flat() as unknown[],
        text: cells.text.flat(),
        decimal: application.decimalSeparator,
      };
    });
  const formulas = ['=IF(GYLE.GAP(2.5,1)>1.4,"1,5;",SUM({1,2;3,4.5}))', "=1234.5+0", "=OR(TRUE,FALSE)", 1.5];
  beforeEach(() =>
    bench.Excel.run(async (context) => {
      const cells = context.workbook.worksheets.getItem("Sheet1").getRange("A1:A4");
      cells.numberFormat = [["General"], ["#,##0.00"], ["General"], ["0.0"]];
      cells.formulas = formulas.map((formula) => [formula]);
      await context.sync();
    }),
  );

  // Expected by hand, by what German and French Excel show (from memory).
  it.each([
    {
      locale: "en-US" as const,
      local: formulas,
      text: ["1,5;", "1,234.50", "TRUE", "1.5"],
      decimal: ".",
    },
    {
      locale: "de-DE" as const,
      local: ['=WENN(GYLE.GAP(2,5;1)>1,4;"1,5;";SUMME({1.2;3.4,5}))', "=1234,5+0", "=ODER(WAHR;FALSCH)", 1.5],
      text: ["1,5;", "1.234,50", "WAHR", "1,5"],
      decimal: ",",
    },
    {
      locale: "fr-FR" as const,
      local: ['=SI(GYLE.GAP(2,5;1)>1,4;"1,5;";SOMME({1.2;3.4,5}))', "=1234,5+0", "=OU(VRAI;FAUX)", 1.5],
      text: ["1,5;", "1\u202F234,50", "VRAI", "1,5"],
      decimal: ",",
    },
  ])("$locale: formulas, shown numbers and the decimal sign; the formulas of a program stay", async ({ locale, local, text, decimal }) => {
    bench.host.behave({ locale });
    expect(await seen()).toEqual({ formulas, local, text, decimal });
    await bench.Excel.run(async (context) => {
      const cells = context.workbook.worksheets.getItem("Sheet1").getRange("A1:A4");
      cells.clear("Contents");
      cells.formulasLocal = local.map((formula) => [formula]);
      await context.sync();
    });
    expect(await seen()).toEqual({ formulas, local, text, decimal });
  });
});
