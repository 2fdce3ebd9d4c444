import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
const at = (...cells: string[]) => cells.map((cell) => bench.valueAt("Sheet1", cell));

beforeAll(async () => {
  bench = await openTestBench();
  bench.univerAPI.getActiveWorkbook()!.insertSheet("Second");
  bench.univerAPI.getActiveWorkbook()!.insertDefinedName("steps", "Sheet1!$A$1");
}, START_TIMEOUT);
afterAll(() => bench.dispose());

it("A1# is what A1 spills over, also entered before it, by a name, from another sheet, in capitals or not", async () => {
  await enter(bench, {
    D1: "=SUM(A1#)",
    D2: "=ROWS(A1#)",
    D3: "=SUM(INDEX(a1#,0,2))",
    D4: "=SUM(steps#)",
    D5: "=GYLE.SEE($A$1#)",
    D6: "=SUM(H40#)",
  });
  await enter(bench, { A1: "=SEQUENCE(D9,2)", D9: 3 });
  await enter(bench, { A1: "=SUM(Sheet1!A1#)", A2: "=SUM('Sheet1'!A1#)+1" }, "Second");
  expect(at("D1", "D2", "D3", "D4", "D6")).toEqual([21, 3, 12, 21, 0]);
  expect(JSON.parse(String(bench.valueAt("Sheet1", "D5")))).toEqual([
    [
      [1, 2],
      [3, 4],
      [5, 6],
    ],
    null,
    null,
  ]);
  expect([bench.valueAt("Second", "A1"), bench.valueAt("Second", "A2")]).toEqual([21, 22]);
});

it("follows when the spill grows, shrinks, becomes a single value and is blocked", async () => {
  await enter(bench, { D9: 5 });
  expect(at("D1", "D2", "D4")).toEqual([55, 5, 55]);
  await enter(bench, { D9: 2 });
  expect(at("D1", "D2", "D4")).toEqual([10, 2, 10]);
  await enter(bench, { A1: "=7" });
  expect(at("D1", "D2", "D4")).toEqual([7, 1, 7]);
  await enter(bench, { A1: "=SEQUENCE(D9,2)" });
  expect(at("D1", "D2")).toEqual([10, 2]);
  await enter(bench, { B2: "in the way" });
  expect(at("D1")).toEqual(["#SPILL!"]);
  await enter(bench, { B2: null });
  expect(at("D1", "D2")).toEqual([10, 2]);
});

it("spills on by itself, and feeds a chain of spills", async () => {
  await enter(bench, { F1: "=A1#*10", I1: "=F1#+1", L1: "=SUM(I1#)", D9: 3 });
  expect(at("F3", "G3", "I3", "J3", "L1")).toEqual([50, 60, 51, 61, 216]);
  await enter(bench, { D9: 1 });
  expect(at("G1", "G2", "J1", "J2", "L1")).toEqual([20, null, 21, null, 32]);
});
