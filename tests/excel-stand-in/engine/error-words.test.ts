import { afterAll, beforeAll, expect, it } from "vitest";
import { errorWords } from "../../../src/excel-stand-in/engine/error-words";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
  bench.univerAPI.getActiveWorkbook()!.insertSheet("Second");
  await enter(bench, {
    A1: '=GYLE.FAIL("other")',
    A2: "=A1*2",
    A3: "=SUM(A2,1)",
    A4: "=bad+1",
    A5: "=SUM(A1:A2)",
    A6: "='Second'!A1",
    B1: "=GYLE.GAP(1)",
    B2: "=GYLE.GAP(1.05;1.01)",
    B3: "=GYLE.SEE()",
    B4: "=GYLE.GAP(1,2,3)",
    B5: "=GYLE.GAP(1)+1",
    C1: "=GYLE.NOPE(1)",
    C2: "=grvity+1",
    C3: "=GYLE.GAP(“1”,2)",
    C4: "=LET(x,1,x+y)",
    D1: "=GYLE.STEPS(3)",
    D2: "in the way",
    H1: "=1/0",
    H2: "=H1",
    H3: "=#REF!+1",
    H4: 5,
    H5: "=GYLE.GAP(1,2))",
  });
  await enter(bench, { A1: '=GYLE.FAIL("other")' }, "Second");
  bench.univerAPI.getActiveWorkbook()!.insertDefinedName("bad", "Sheet1!$A$1");
  await enter(bench, { A4: "=bad+1" });
}, START_TIMEOUT);
afterAll(() => bench.dispose());

function wordsAt(a1: string): string | undefined {
  const range = bench.univerAPI.getActiveWorkbook()!.getSheetByName("Sheet1")!.getRange(a1);
  return errorWords(bench.engine, {
    unitId: range.getUnitId(),
    sheetId: range.getSheetId(),
    row: range.getRow(),
    column: range.getColumn(),
  });
}

it.each([
  ["A1", "out of range"],
  ["A2", "the error comes from A1: out of range"],
  ["A3", "the error comes from A1: out of range"],
  ["A4", "the error comes from A1: out of range"],
  ["A5", "the error comes from A1: out of range"],
  ["A6", "the error comes from A1 of the sheet Second: out of range"],
  ["H2", "the error comes from H1: something is divided by zero"],
])("an error that was handed on says where it comes from: %s", (cell, words) => expect(wordsAt(cell)).toContain(words));

it.each([
  ["B1", "GYLE.GAP(high, low) takes 2 arguments, not 1"],
  ["B2", "parted by commas"],
  ["B3", "GYLE.SEE(first, [second], [third]) takes 1 to 3 arguments"],
  ["B4", "takes 2 arguments, not 3"],
  ["B5", "takes 2 arguments, not 1"],
])("a wrong number of arguments is counted: %s", (cell, words) => {
  expect(bench.valueAt("Sheet1", cell)).toBe("#N/A");
  expect(wordsAt(cell)).toContain(words);
});

it.each([
  ["C1", "there is no function GYLE.NOPE"],
  ["C2", "there is nothing called grvity here"],
  ["C3", "straight quotation marks"],
  ["C4", "there is nothing called y here"],
])("what is not known is named: %s", (cell, words) => {
  expect(bench.valueAt("Sheet1", cell)).toBe("#NAME?");
  expect(wordsAt(cell)).toContain(words);
});

it.each([
  ["D1", "#SPILL!", "is not empty"],
  ["H1", "#DIV/0!", "divided by zero"],
  ["H5", "#VALUE!", "a bracket, a quotation mark or a comma too many"],
  ["H3", "#REF!", "a cell or a sheet that is gone"],
])("the other kinds are put in words: %s", (cell, error, words) => {
  expect(bench.valueAt("Sheet1", cell)).toBe(error);
  expect(wordsAt(cell)).toContain(words);
});

it("a cell without an error has none", () => expect([wordsAt("H4"), wordsAt("A99")]).toEqual([undefined, undefined]));

it("an earlier formula's words do not stay with the next one", async () => {
  await enter(bench, { J1: '=GYLE.FAIL("other")' });
  expect(wordsAt("J1")).toBe("out of range");
  await enter(bench, { J1: "=1/0" });
  expect(wordsAt("J1")).toContain("divided by zero");
});

it("formulas that hand an error round in a circle come to an end", async () => {
  await enter(bench, { K1: "=IF(FALSE,K2,A1)", K2: "=K1" });
  expect(["K1", "K2"].map((cell) => bench.valueAt("Sheet1", cell))).toContain("#NUM!");
  expect(["K1", "K2"].map(wordsAt).join()).toContain("out of range");
});
