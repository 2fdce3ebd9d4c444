import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, evaluateAll, openTestBench, START_TIMEOUT } from "../support/test-bench";

/** Expected values: Microsoft's pages on these functions, sums by hand, and workbooks that Excel has computed (samples/excel-computed). */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
  const first = { A1: 23, A2: '="23"', A3: true, A4: 1, A5: "brown", A6: "=NA()", A8: '=""' };
  await enter(bench, { ...first, B1: 1, B2: 2, B3: 3, B4: 4, B5: 5, B6: 6, B7: 7, B8: 8, C1: "Hop", C2: "x", C3: "x", D1: "Hop", D2: "y" });
}, START_TIMEOUT);
afterAll(() => bench.dispose());

it("functions of the grid's library that Excel's own values contradicted", async () => {
  const wanted: Record<string, unknown> = {
    "=ISO.CEILING(-4.3)": -4,
    "=ISO.CEILING(-4.3,2)": -4,
    "=FLOOR(10,A8)": "#VALUE!",
    "=COUNTIF(A1:A8,23)": 2,
    '=COUNTIF(A1:A8,"<>23")': 7,
    '=COUNTIF(A1:A8,"<>")': 7,
    '=COUNTIF(A1:A8,"=")': 1,
    '=COUNTIF(A1:A8,"")': 2,
    '=COUNTIF(A1:A8,"b?o*")': 1,
    '=COUNTIF(A:A,"<>brown")': 1_048_575,
    "=COUNTIF(A1:A8,#N/A)": 1,
    '=SUMIF(A1:A8,"<>brown",B1)': 31,
    '=AVERAGEIF(B1:B8,">99")': "#DIV/0!",
    '=MAXIFS(B1:B8,B1:B8,">99")': 0,
    "=DCOUNT(C1:C3,,D1:D2)": 0,
    '=DCOUNTA(C1:C3,"Hop",C1:C2)': 2,
    "=COUNTA(A1:A8)": 7,
    "=AVERAGEA(A3:A5)": 2 / 3,
    "=AVERAGE(A1:A8)": "#N/A",
    "=SLOPE(B1:B4,A1:A4)": -3 / 22,
    '=SEARCH("b?o","a brown")': 3,
    '=SEARCH("~~","Hi ~!")': 4,
    "=XLOOKUP(4.5,B1:B8,B1:B8,,-1)": 4,
    "=XLOOKUP(4.5,B1:B8,B1:B8,,1)": 5,
    "=XLOOKUP(1,B1:B8,B1:B8,,9)": "#VALUE!",
    "=TIME(12,-2,10)": 43_090 / 86_400,
    "=ROWS(C:C)": 1_048_576,
    "=COLUMNS(3:3)": 16_384,
    '=OR("TRUE",FALSE)': true,
    "=SUM(OFFSET(B1,1.9,0,2.9,1))": 5,
    "=ZZ2000": 0,
    // Microsoft's page on INDIRECT: a reference that is none is #REF!. Sheets' names are the same in small letters.
    '=INDIRECT("Gone!A1")': "#REF!",
    "=SUM(INDIRECT(\"'Gone'!A1:B2\"))": "#REF!",
    '=INDIRECT("Gone!R1C1",FALSE)': "#REF!",
    '=INDIRECT("Gone!"&"1:1")': "#REF!",
    '=INDIRECT("sheet1!A1")': 23,
    '=SUM(INDIRECT("Sheet1!B1:B3"))': 6,
    '=IFERROR(C9,"err")': 0,
    "=SUM(SEQUENCE(3000))": 4_501_500,
  };
  expect(Object.fromEntries(await evaluateAll(bench, Object.keys(wanted)))).toEqual(wanted);
});

it("an empty text that a formula gives is a text to others, in the calculation that makes it as in the next", async () => {
  const read = () => ["E2", "E3"].map((cell) => bench.valueAt("Sheet1", cell));
  await enter(bench, { E1: '=IF(B1=1,"","x")', E2: "=COUNTA(E1)", E3: "=ISBLANK(E1)" });
  expect(read()).toEqual([1, false]);
  await enter(bench, { E2: "=COUNTA(E1)+0", E3: "=OR(ISBLANK(E1))" });
  expect(read()).toEqual([1, false]);
});
