import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());

const circular = () =>
  bench.engine.circular
    .cells()
    .map(({ row, column }) => [row, column])
    .sort();

it("finds cells that depend on themselves, and loses them when they no longer do", async () => {
  await enter(bench, { A1: "=A1+1" });
  expect(circular()).toEqual([[0, 0]]);
  await enter(bench, { B1: "=B2*2", B2: "=SUM(B1:B1)", C1: "=B1+1" });
  expect(circular()).toEqual([
    [0, 0],
    [0, 1],
    [1, 1],
  ]);
  await enter(bench, { B2: 4 });
  expect(circular()).toEqual([[0, 0]]);
  expect(bench.valueAt("Sheet1", "C1")).toBe(9);
  await enter(bench, { A1: 1 });
  expect(circular()).toEqual([]);
});
