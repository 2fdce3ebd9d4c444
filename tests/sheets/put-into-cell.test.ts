import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { functionNamed } from "../../src/functions/registry";
import { formulaOf, previewFormula, putIntoCell } from "../../src/workbook/care/explain/put-into-cell";
import type { CellValue } from "../../src/workbook/grid/read/named-cells";
import { hostWords } from "../../src/workbook/grid/words/host-words";
import { benchTimeout, openBatchBench } from "../support/batch-bench";

const abv = functionNamed("BEER.ABV");
const target = { sheet: "Sheet1", address: "C1" };
let bench: HeadlessBench;
beforeEach(async () => {
  bench = await openBatchBench();
  await Excel.run(async (context) => {
    context.workbook.worksheets.getItem("Sheet1").getRange("A1:A3").values = [[1.05], [1.01], [1.04]];
    await context.sync();
  });
}, benchTimeout);
afterEach(() => bench.dispose());

const put = (formula: string, rows = 1, agreed?: CellValue) =>
  Excel.run((context) => putIntoCell(context, target, formula, { rows, columns: 1 }, agreed));
const preview = (...typed: string[]) => Excel.run((context) => previewFormula(context, abv, typed, ".", target));

describe("a formula from fields", () => {
  it("puts words in quotes, decimal commas right and leaves out what is empty at the end", () => {
    expect(formulaOf(abv, ["1,05", "A2", ""], ".")).toBe("=GYLE.BEER.ABV(1.05, A2)");
    expect(formulaOf(functionNamed("HEAT.WARM"), ["20", "60", "170", "3", "", "US"], ".")).toBe('=GYLE.HEAT.WARM(20, 60, 170, 3, , "us")');
    expect(formulaOf(functionNamed("HEAT.WARM"), ["20", "60", "170", "3", "", "units"], ".")).toBe(
      "=GYLE.HEAT.WARM(20, 60, 170, 3, , units)",
    );
    expect(formulaOf(functionNamed("BEER.STYLE"), ["Irish Stout", "og"], ".")).toBe('=GYLE.BEER.STYLE("Irish Stout", og)');
  });

  it(
    "shows its answer before it stands anywhere, or what is wrong or missing",
    async () => {
      expect(await preview("A1", "A2")).toMatchObject({ kind: "answer", shown: expect.stringMatching(/^5\.\d/), rows: 1 });
      expect(await preview("A1:A3", "A2")).toMatchObject({ kind: "answer", rows: 3, columns: 1 });
      expect(await preview("A1", "")).toEqual({ kind: "empty", words: "Still needed: final_gravity." });
      expect(await preview("12.4", "A2")).toMatchObject({
        kind: "wrong",
        words: expect.stringMatching(/^original_gravity is 12\.4.*looks like °P.*\.$/),
      });
      expect(await preview("(A1", "A2")).toMatchObject({ kind: "wrong", words: expect.stringContaining("bracket") });
      expect(bench.valueAt("Sheet1", "C1")).toBeNull();
    },
    benchTimeout,
  );
});

describe("where the comma is the decimal sign", () => {
  it(
    "the form takes what is typed there, and shows formulas and hints as they are written there",
    async () => {
      bench.host.behave({ locale: "de-DE" });
      expect(await put(formulaOf(abv, ["MAX(1,05;A1)", "1,01"], ","))).toMatchObject({
        kind: "written",
        shown: expect.stringMatching(/^5,31/),
      });
      expect(await put("=GYLE.BEER.ABV(A3, A2)")).toMatchObject({
        holds: "=GYLE.BEER.ABV(MAX(1.05,A1), 1.01)",
        words: expect.stringContaining("C1 holds =GYLE.BEER.ABV(MAX(1,05;A1); 1,01)"),
      });
      expect(await Excel.run((context) => previewFormula(context, abv, ["12,4", "A2"], ",", target))).toMatchObject({
        words: expect.stringMatching(/wrap it in GYLE\.WORT\.SG\(12,4\)/),
      });
      bench.host.behave({});
    },
    benchTimeout,
  );
});

describe("putting it into a cell", () => {
  it(
    "writes into an empty cell, asks before it replaces, and never over the cells that it spills into",
    async () => {
      expect(await put("=GYLE.BEER.ABV(A1, A2)")).toMatchObject({ kind: "written", shown: expect.stringMatching(/^5\.\d/) });
      expect(await put("=GYLE.BEER.ABV(A3, A2)")).toMatchObject({
        kind: "occupied",
        holds: "=GYLE.BEER.ABV(A1, A2)",
        words: expect.stringContaining("C1 holds =GYLE.BEER.ABV(A1, A2)"),
      });
      // Somebody types there between the question and the answer: theirs is not what was given up.
      expect(await put("=GYLE.BEER.ABV(A3, A2)", 1, "an older text")).toMatchObject({ kind: "occupied", holds: "=GYLE.BEER.ABV(A1, A2)" });
      expect(await put("=GYLE.BEER.ABV(A3, A2)", 1, "=GYLE.BEER.ABV(A1, A2)")).toMatchObject({
        kind: "written",
        shown: expect.stringMatching(/^3\.9/),
      });
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Sheet1").getRange("C3").values = [["mine"]];
        await context.sync();
      });
      const blocked = await put("=GYLE.BEER.ABV(A1:A3, A2)", 3, "=GYLE.BEER.ABV(A3, A2)");
      expect(blocked).toMatchObject({ kind: "occupied", words: expect.stringContaining("C3 is not empty") });
      expect(blocked).not.toHaveProperty("holds");
      expect(bench.valueAt("Sheet1", "C3")).toBe("mine");
    },
    benchTimeout,
  );

  it(
    "writes nothing on a protected sheet, on one that is gone, and while a cell is edited; the words say why",
    async () => {
      const words = async (): Promise<string> => put("=GYLE.BEER.ABV(A1, A2)").then(() => "written", hostWords);
      const sheet = (context: Excel.RequestContext) => context.workbook.worksheets.getItem("Sheet1");
      await Excel.run(async (context) => {
        sheet(context).protection.protect();
        await context.sync();
      });
      expect(await words()).toContain("If the sheet is protected, take the protection off");
      await Excel.run(async (context) => {
        sheet(context).protection.unprotect();
        await context.sync();
      });
      const notEditing = bench.host.cellEditing;
      bench.host.cellEditing = { active: () => true, ended: () => Promise.resolve() };
      expect(await words()).toContain("A cell is being edited");
      bench.host.cellEditing = notEditing;
      await bench.calculate();
      expect(bench.valueAt("Sheet1", "C1")).toBeNull();
      await Excel.run(async (context) => {
        context.workbook.worksheets.add("Other");
        sheet(context).delete();
        await context.sync();
      });
      expect(await words()).toContain("The sheet is gone");
    },
    benchTimeout,
  );

  it.each([1, 2, 3])(
    "writes nothing when round trip %i fails, and says written when only the look afterwards fails",
    async (n) => {
      bench.host.faults.failAtSync(n, new Error("the host is busy"));
      await expect(put("=GYLE.BEER.ABV(A1, A2)")).rejects.toThrow("the host is busy");
      await bench.calculate();
      expect(bench.valueAt("Sheet1", "C1")).toBeNull();
      bench.host.faults.failAtSync(4, new Error("the host is busy"));
      expect(await put("=GYLE.BEER.ABV(A1, A2)")).toEqual({ kind: "written", shown: "" });
    },
    benchTimeout,
  );
});
