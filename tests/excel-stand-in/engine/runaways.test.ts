import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { errorWords } from "../../../src/excel-stand-in/engine/error-words";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
afterEach(() => Object.assign(bench.engine.runaways.limits, { formula: 4000, together: 12_000, hurried: 200, numbers: 6_000_000 }));

const at = (cell: string) => bench.valueAt("Sheet1", cell);
const stopped = () => bench.engine.runaways.cells().map(({ row, column }) => `${row},${column}`);
const words = (row: number, column: number) => {
  const workbook = bench.univerAPI.getActiveWorkbook()!;
  return errorWords(bench.engine, { unitId: workbook.getId(), sheetId: workbook.getActiveSheet().getSheetId(), row, column });
};

it("ends a formula that would count for hours, says so in its cell, and calculates the others", async () => {
  bench.engine.runaways.limits.formula = 300;
  // A sum over two billion terms, in plain numbers.
  await enter(bench, { A1: "=BINOM.DIST.RANGE(2000000000,0.5,1,1999999999)", A2: "=A1+1", B1: "=1+1" });
  expect([at("A1"), at("A2"), at("B1")]).toEqual(["#CALC!", "#CALC!", 2]);
  expect(stopped()).toEqual(["0,0"]);
  expect(words(0, 0)).toBe("this formula was stopped: it took too long to calculate");
  expect(words(1, 0)).toBe("the error comes from A1: this formula was stopped: it took too long to calculate");
  await enter(bench, { A1: "=BINOM.DIST.RANGE(2,0.5,1,2)" });
  expect([at("A1"), stopped()]).toEqual([0.75, []]);
  await enter(bench, { A1: null, A2: null, B1: null });
});

it("ends a formula whose answer would not fit into memory", async () => {
  await enter(bench, { A1: "=SUM(SEQUENCE(100000)*SEQUENCE(1,16384))", B1: "=SUM(SEQUENCE(300)*SEQUENCE(1,300))" });
  expect([at("A1"), at("B1")]).toEqual(["#CALC!", 45150 ** 2]);
  expect(words(0, 0)).toMatch(/^this formula was stopped: /u);
  await enter(bench, { A1: null, B1: null });
  expect(stopped()).toEqual([]);
});

it("gives many slow formulas a time together, and each of the rest a short one", async () => {
  Object.assign(bench.engine.runaways.limits, { formula: 300, together: 400, hurried: 20 });
  const slow = Object.fromEntries(
    Array.from({ length: 30 }, (_, row) => [`A${row + 1}`, `=BINOM.DIST.RANGE(${2e9 + row},0.5,1,1999999999)`]),
  );
  const started = performance.now();
  await enter(bench, { ...slow, B1: "=1+1" });
  // Thirty of 300 ms each would be 9 s; 30 × 20 ms and the first ones come to about 1 s.
  expect(performance.now() - started).toBeLessThan(6000);
  expect(stopped()).toHaveLength(30);
  expect(at("B1")).toBe(2);
  await enter(bench, Object.fromEntries(Object.keys(slow).map((cell) => [cell, null])));
});

it("calculates everything else where a formula cannot even be taken apart", async () => {
  await enter(bench, {
    A1: "=LET(x,8,LET(x,2,x+x)*x)",
    B1: "=2*3",
    C1: `=${"(".repeat(4000)}1${")".repeat(4000)}`,
    D1: `=${"-".repeat(9000)}1`,
  });
  expect(at("B1")).toBe(6);
  expect(at("A1")).not.toBeNull();
  await enter(bench, { B2: "=B1+1" });
  expect(at("B2")).toBe(7);
});

it("leaves a formula that is nested too deeply as the text that it is, and takes it back by undo", async () => {
  const sheet = () => bench.univerAPI.getActiveWorkbook()!.getSheetByName("Sheet1")!;
  const deep = `=${"ABS(".repeat(300)}1${")".repeat(300)}`;
  await enter(bench, { E1: 5, F1: "=E1*2" });
  await enter(bench, { E1: deep });
  expect([at("E1"), sheet().getRange("E1").getFormula(), at("F1")]).toEqual([deep, "", "#VALUE!"]);
  await bench.univerAPI.undo();
  await bench.calculate();
  expect([at("E1"), at("F1")]).toEqual([5, 10]);
  await enter(bench, { E1: `=${"ABS(".repeat(64)}1${")".repeat(64)}` });
  expect([at("E1"), at("F1")]).toEqual([1, 2]);
});

it("lets the page answer while it calculates", async () => {
  let turns = 0;
  const timer = setInterval(() => turns++, 0);
  bench.engine.runaways.limits.formula = 100;
  const slow = Object.fromEntries(
    Array.from({ length: 10 }, (_, row) => [`A${row + 5}`, `=BINOM.DIST.RANGE(${2e9 + row},0.5,1,1999999999)`]),
  );
  const before = new Promise<number>((resolve) => bench.engine.watch.onStart(() => resolve(turns)));
  await enter(bench, slow);
  clearInterval(timer);
  expect(turns - (await before)).toBeGreaterThan(5);
});
