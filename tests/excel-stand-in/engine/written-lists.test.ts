import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());

const shown = async (formulas: readonly string[]): Promise<unknown[]> => {
  await enter(bench, { A1: 3, ...Object.fromEntries(formulas.map((formula, row) => [`D${row + 1}`, formula])) });
  return formulas.map((_, row) => bench.valueAt("Sheet1", `D${row + 1}`));
};

it("lists that are written out stand behind any operator", async () => {
  const sums: [string, number][] = [
    ["=SUM(2*{1,2})", 6],
    ["=SUM(A1*{1,2})", 9],
    ["=SUM(A1+{1,2})", 9],
    ["=SUM(A1*2*{1;2})", 18],
    ["=SUM(1/{1,2})", 1.5],
    ["=SUM(10^(2*{1,2}))", 10_100],
    ["=SUM({1,2}*A1*{1,2})", 15],
    ["=SUM(-A1*{1,2})", -9],
    ['=SUM(--(A1&{"","0"}))', 33],
    ["=SUM(MAX(1,2)*{1,2})", 6],
  ];
  expect(await shown(sums.map(([formula]) => formula))).toEqual(sums.map(([, sum]) => expect.closeTo(sum, 9)));
});

it("a list behind no operator is a slip, and stays one", async () => {
  for (const value of await shown(["=2{1,2}", "=A1{1,2}", "={1,2}{1,2}", "=SUM(2 {1,2})"])) expect(String(value)).toMatch(/^#/);
});
