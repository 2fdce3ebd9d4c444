import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, evaluateAll, openTestBench, START_TIMEOUT } from "../support/test-bench";

const arrivals: [string, string, unknown][] = [
  ["one cell is a matrix of one", "=GYLE.SEE(A1)", [[[1.05]], null, null]],
  ["names in any case", "=gyle.see(A1)", [[[1.05]], null, null]],
  ["a range with number, logical value and text", "=GYLE.SEE(A2:A4)", [[[1.01], [true], ["Pale"]], null, null]],
  ["an argument left out in the middle", "=GYLE.SEE(A1,,A2)", [[[1.05]], null, [[1.01]]]],
  ["a number as people write it", "=GYLE.SEE(1.050,-1.50,.5)", [[[1.05]], [[-1.5]], [[0.5]]]],
  ["per cent and powers of ten", "=GYLE.SEE(5%,1.5E2)", [[[0.05]], [[150]], null]],
  ["texts that look like numbers stay texts", '=GYLE.SEE("1.050","5%","2026-01-16")', [[["1.050"]], [["5%"]], [["2026-01-16"]]]],
  ["a date is its serial number", "=GYLE.SEE(DATE(2026,1,16))", [[[46038]], null, null]],
  [
    "an array constant",
    "=GYLE.SEE({1,2,3;4,5,6})",
    [
      [
        [1, 2, 3],
        [4, 5, 6],
      ],
      null,
      null,
    ],
  ],
  [
    "an array constant with text and empty text",
    '=GYLE.SEE({"Pale","";TRUE,2.50})',
    [
      [
        ["Pale", ""],
        [true, 2.5],
      ],
      null,
      null,
    ],
  ],
  [
    "columns put side by side by CHOOSE",
    "=GYLE.SEE(CHOOSE({1,2},B1:B3,A1:A3))",
    [
      [
        [10, 1.05],
        [20, 1.01],
        [30, true],
      ],
      null,
      null,
    ],
  ],
  [
    "CHOOSE over a blank cell",
    "=GYLE.SEE(CHOOSE({1,2},B3:B4,A1:A2))",
    [
      [
        [30, 1.05],
        [0, 1.01],
      ],
      null,
      null,
    ],
  ],
  ["a range through IF", "=GYLE.SEE(IF(A3,B1:B2))", [[[10], [20]], null, null]],
  ["a computed array", "=GYLE.SEE(B1:B3/10)", [[[1], [2], [3]], null, null]],
  ["text joined", '=GYLE.SEE(A4&" ale")', [[["Pale ale"]], null, null]],
];

const answers: [string, unknown][] = [
  ["=GYLE.GAP(A1,A2)*1000", 40],
  ['=IF(GYLE.GAP(A1,A2)>0,"beer","wort")', "beer"],
  ["=LET(gap,GYLE.GAP(B2,B1),gap*2)", 20],
  ['=IFERROR(GYLE.FAIL("plain"),"caught")', "caught"],
  ["=INDEX(GYLE.STEPS(3),2,1)", "step 2"],
  ["=SUM(INDEX(GYLE.STEPS(4),0,2))", 60],
  ['=XLOOKUP("step 3",INDEX(GYLE.STEPS(3),0,1),INDEX(GYLE.STEPS(3),0,2))', 20],
  ['=TEXTJOIN(", ",TRUE,INDEX(GYLE.STEPS(2),0,1))', "step 1, step 2"],
  ['=GYLE.FAIL("number")', 7],
  ['=GYLE.FAIL("plain")', "#VALUE!"],
  ['=GYLE.FAIL("ragged")', "#VALUE!"],
  ['=GYLE.FAIL("infinite")', "#NUM!"],
  ['=GYLE.FAIL("other")', "#NUM!"],
  ["=GYLE.NO.SUCH(1)", "#NAME?"],
];

let bench: HeadlessBench;
let results: Map<string, unknown>;
beforeAll(async () => {
  bench = await openTestBench();
  await enter(bench, { A1: 1.05, A2: 1.01, A3: true, A4: "Pale", A5: "=1/0", B1: 10, B2: 20, B3: 30 });
  results = await evaluateAll(bench, [
    ...arrivals.map(([, formula]) => formula),
    ...answers.map(([formula]) => formula),
    "=GYLE.SEE(A4:A5)",
    "=GYLE.SEE.STRICT(A1:A5)",
  ]);
}, START_TIMEOUT);
afterAll(() => bench.dispose());

const errorAt = (row: number, column: number) => {
  const workbook = bench.univerAPI.getActiveWorkbook()!;
  return bench.engine.errorMessageAt(workbook.getId(), workbook.getSheets()[0]!.getSheetId(), row, column);
};

describe("what arrives, as JSON of the arguments", () => {
  it.each(arrivals)("%s", (_what, formula, expected) => expect(JSON.parse(String(results.get(formula)))).toEqual(expected));

  it.each([
    ["zero", 0],
    ["null", null],
    ["text", ""],
  ] as const)("a blank cell as %s", async (blank, expected) => {
    bench.engine.functions.setBlank(blank);
    const formula = "=GYLE.SEE(C1:C2,C3)";
    const seen = JSON.parse(String((await evaluateAll(bench, [formula])).get(formula))) as unknown;
    bench.engine.functions.setBlank("zero");
    expect(seen).toEqual([[[expected], [expected]], [[expected]], null]);
  });

  it("an error where the metadata lets it in, as Excel's error object", () => {
    expect(results.get("=GYLE.SEE(A4:A5)")).toContain('"code":"#DIV/0!"');
  });

  it("an error stops the call where it is not let in", () => {
    expect(results.get("=GYLE.SEE.STRICT(A1:A5)")).toBe("#DIV/0!");
    expect(bench.engine.functions.callCounts.get("GYLE.SEE.STRICT")).toBeUndefined();
  });
});

describe("what comes back", () => {
  it.each(answers)("%s", (formula, expected) => {
    const result = results.get(formula);
    if (typeof expected === "number") expect(result).toBeCloseTo(expected, 9);
    else expect(result).toBe(expected);
  });

  it("a failing function leaves every other cell calculated", async () => {
    await enter(bench, { F1: '=GYLE.FAIL("plain")', F2: "=1+1", F3: "=GYLE.GAP(B2,B1)" });
    expect([bench.valueAt("Sheet1", "F1"), bench.valueAt("Sheet1", "F2"), bench.valueAt("Sheet1", "F3")]).toEqual(["#VALUE!", 2, 10]);
  });

  it("keeps the message of an error for hovering, and forgets it when the error is put right", async () => {
    await enter(bench, { A20: "other", F10: "=GYLE.FAIL(A20)" });
    expect(errorAt(9, 5)).toBe("out of range");
    await enter(bench, { A20: "number" });
    expect(bench.valueAt("Sheet1", "F10")).toBe(7);
    expect(errorAt(9, 5)).toBeUndefined();
  });

  it("keeps a message when a second function in the formula succeeds", async () => {
    await enter(bench, { F11: '=GYLE.FAIL("other")+GYLE.GAP(B2,B1)' });
    expect([bench.valueAt("Sheet1", "F11"), errorAt(10, 5)]).toEqual(["#NUM!", "out of range"]);
  });
});

describe("spills", () => {
  it("fill the cells, with empty texts and errors in their places", async () => {
    await enter(bench, { H1: "=GYLE.STEPS(3)" });
    expect(["H1", "H2", "H3", "I3", "J1", "J2"].map((cell) => bench.valueAt("Sheet1", cell))).toEqual([
      "step 1",
      "step 2",
      "step 3",
      20,
      "",
      "#N/A",
    ]);
    expect(errorAt(1, 9)).toBe("no second value");
  });

  it("give way with #SPILL! and come back", async () => {
    await enter(bench, { H20: "=GYLE.STEPS(2)", I21: "in the way" });
    expect([bench.valueAt("Sheet1", "H20"), bench.valueAt("Sheet1", "H21")]).toEqual(["#SPILL!", null]);
    await enter(bench, { I21: null });
    expect([bench.valueAt("Sheet1", "H20"), bench.valueAt("Sheet1", "I21")]).toEqual(["step 1", 10]);
  });

  it("tell their extent", async () => {
    await enter(bench, { H30: "=GYLE.STEPS(4)" });
    const workbook = bench.univerAPI.getActiveWorkbook()!;
    const extent = bench.engine.spills.extentAt(workbook.getId(), workbook.getSheets()[0]!.getSheetId(), 31, 8);
    expect(extent).toMatchObject({ startRow: 29, endRow: 32, startColumn: 7, endColumn: 9 });
  });
});
