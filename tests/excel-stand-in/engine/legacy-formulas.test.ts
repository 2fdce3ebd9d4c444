import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { asLegacy, withAtSigns } from "../../../src/excel-stand-in/engine/implicit-intersection";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

/**
 * What a formula without the mark of dynamic arrays gives: Microsoft, "Implicit intersection operator: @", support.microsoft.com, read
 * as: one row, one column, or the first of a block of values; and files that Excel has computed (LibreOffice agrees for those below).
 */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());

const legacy = (f: string) => ({ f, custom: { legacy: true } });
const block = (f: string, rows: number, columns: number) => ({ f, custom: { array: [rows, columns] } });

/** Column A holds 1 to 6, B their tens, from row 1; the other cells are given. */
async function open(cells: Record<string, object>, names: Record<string, string> = {}): Promise<void> {
  const cellData: Record<number, Record<number, object>> = {};
  for (let row = 0; row < 6; row++) cellData[row] = { 0: { v: row + 1 }, 1: { v: 10 * (row + 1) } };
  for (const [address, cell] of Object.entries(cells)) {
    const [, letter, number] = /^([A-Z])(\d+)$/u.exec(address)!;
    (cellData[Number(number) - 1] ??= {})[letter!.charCodeAt(0) - 65] = cell;
  }
  const sheet = { id: "one", name: "Sheet1", cellData, rowCount: 60, columnCount: 16 };
  await bench.load({ id: `legacy-${Math.random().toString(36).slice(2)}`, sheetOrder: ["one"], sheets: { one: sheet } } as never);
  for (const [name, refersTo] of Object.entries(names)) bench.univerAPI.getActiveWorkbook()!.insertDefinedName(name, refersTo);
  await bench.calculate();
}
const at = (cell: string) => bench.valueAt("Sheet1", cell);

describe("a formula without the mark of dynamic arrays", () => {
  it("takes the cell of its own row or column where one value is asked for, and never spills", async () => {
    await open({
      D2: legacy("=A1:A6"),
      D3: legacy("=A1:A6*10"),
      D4: legacy("=$A:$A+1"),
      D5: legacy("=ABS(-A1:A6)"),
      D9: legacy("=A1:A6"),
      B9: legacy("=A1:B1"),
      E3: legacy("=A1:B6"),
    });
    expect(["D2", "D3", "D4", "D5", "D6"].map(at)).toEqual([2, 30, 5, 5, null]);
    expect(["D9", "B9", "E3"].map(at)).toEqual(["#VALUE!", 10, "#VALUE!"]);
  });

  it("hands whole ranges to functions that take them, and calculates arrays only where the function does", async () => {
    await open({
      D1: legacy("=SUM(A1:A6)"),
      D2: legacy("=SUM(A1:A6*2)"),
      D3: legacy("=SUMPRODUCT(A1:A6*B1:B6)"),
      D4: legacy("=LOOKUP(2,1/(A1:A6<4),B1:B6)"),
      D5: legacy("=SUM({1,2,3}*2)"),
      D6: legacy("={7,8;9,10}"),
      E1: legacy("=SUM(IF(TRUE,A1:A6))"),
      E2: legacy("=ROW(A4:A6)"),
      E3: legacy('=IF(A1:A6>2,"more","less")'),
      E4: legacy("=MATCH(40,INDEX(A1:A6*10,0),0)"),
      E5: legacy('=COUNTIF(A1:A6,">"&A1:A6)'),
    });
    expect(["D1", "D2", "D3", "D4", "D5", "D6"].map(at)).toEqual([21, 4, 910, 30, 12, 7]);
    expect(["E1", "E2", "E3", "E4", "E5"].map(at)).toEqual([21, 4, "more", 4, 1]);
  });

  it("takes the cell of its row out of a name, and out of what OFFSET and INDIRECT lead to", async () => {
    await open(
      { D2: legacy("=tens*1"), D3: legacy("=OFFSET(A1,0,1,6,1)"), D4: legacy('=INDIRECT("A1:A6")'), D5: legacy("=tens") },
      { tens: "Sheet1!$B$1:$B$6" },
    );
    expect(["D2", "D3", "D4", "D5"].map(at)).toEqual([20, 30, 4, 50]);
  });

  it("depends on that one cell only: a cell of the range may read it", async () => {
    await open({ D3: legacy("=A1:A6*2"), A4: { f: "=D3+1" } });
    expect([at("D3"), at("A4"), bench.engine.circular.cells()]).toEqual([6, 7, []]);
    await enter(bench, { A3: 5 });
    expect([at("D3"), at("A4")]).toEqual([10, 11]);
  });

  it("means the same after rows were put in, and is dynamic when it is typed anew", async () => {
    await open({ D3: legacy("=$A$1:$A$6") });
    bench.univerAPI.getActiveWorkbook()!.getActiveSheet().insertRows(1, 1);
    await bench.calculate();
    expect([at("D3"), at("D4")]).toEqual([null, 3]);
    await enter(bench, { D4: "=$A$1:$A$7" });
    expect([at("D4"), at("D5"), at("D10")]).toEqual([1, null, 6]);
    await bench.univerAPI.undo();
    await bench.calculate();
    expect([at("D4"), at("D10")]).toEqual([3, null]);
  });
});

describe("a formula for a fixed block", () => {
  it("fills the block and no more, with one value, row or column repeated and #N/A beyond", async () => {
    await open({ D1: block("=A1:A6*2", 2, 2), F1: block("={1,2}", 2, 3), I1: block("=7", 2, 1), J1: block("=SUM(A1:A6*B1:B6)", 1, 1) });
    expect(["D1", "E1", "D2", "E2", "D3"].map(at)).toEqual([2, 2, 4, 4, null]);
    expect(["F1", "G1", "H1", "F2", "G2", "H2"].map(at)).toEqual([1, 2, "#N/A", 1, 2, "#N/A"]);
    expect(["I1", "I2", "J1"].map(at)).toEqual([7, 7, 910]);
  });
});

it("@ in a dynamic formula takes one cell, and its other ranges spill", async () => {
  await open({ D2: { f: "=@A1:A6*10" }, E3: { f: "=@A1:A6+B1:B2" }, D8: { f: "=SUM(@B:B,1)" } });
  expect([at("D2"), at("D3"), at("E3"), at("E4"), at("D8")]).toEqual([20, null, 13, 23, 1]);
});

it("what the engine sees: addresses that move as the range would", () => {
  const around = { isRange: (name: string) => name === "many", isFunction: (name: string) => name !== "week" };
  const seen = (formula: string) => asLegacy(formula, { row: 4, column: 2 }, around);
  expect(seen("=A1:A9")).toBe("=A5");
  expect(seen("=$A$1:$A$9*B$1")).toBe("=$A5*B$1");
  expect(seen("=Data!$1:$1+'My data'!A$2:F$2")).toBe("=Data!C$1+'My data'!C$2");
  expect(seen("=A1:B9")).toBe("=SINGLE(A1:B9)");
  expect(seen("=SUM(A1:A9,many)&many")).toBe("=SINGLE(SUM(A1:A9,many)&SINGLE(many))");
  expect(seen("=FLOOR($A3,N$2)")).toBe("=FLOOR($A3,N$2)");
  expect(seen("=week()")).toBe("=SINGLE(week())");
  expect(seen('=VLOOKUP(A1:A9,B:C,2,"x:y"=one)')).toBe('=VLOOKUP(A5,B:C,2,"x:y"=one)');
  expect(withAtSigns("=@A1:A9+@many+@INDEX(A:A,2)", { row: 4, column: 2 }, around)).toBe("=A5+SINGLE(many)+SINGLE(INDEX(A:A,2))");
});
