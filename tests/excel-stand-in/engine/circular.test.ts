import { afterAll, beforeAll, expect, it } from "vitest";
import { onCircles } from "../../../src/excel-stand-in/engine/circles";
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

it("takes a conditional format for no cell: one that reads what reads the corner of the sheet is no circle", async () => {
  const sheet = bench.univerAPI.getActiveWorkbook()!.getActiveSheet();
  await enter(bench, { A1: 1, B2: "=A1+B1" });
  const rule = sheet
    .newConditionalFormattingRule()
    .whenFormulaSatisfied("=E5>$B$2")
    .setBold(true)
    .setRanges([sheet.getRange("E5:H9").getRange()]);
  sheet.addConditionalFormattingRule(rule.build());
  await enter(bench, { B1: 3 });
  expect([circular(), bench.valueAt("Sheet1", "B2")]).toEqual([[], 4]);
});

it("asks once for the readers of each formula, however many lie on circles", () => {
  // Two circles of 5,000 each, joined by a bridge, and one that reads itself.
  let asked = 0;
  const readers = (one: number): number[] => {
    asked++;
    if (one === 10_000) return [one];
    return [one % 5000 === 4999 ? one - 4999 : one + 1, ...(one === 17 ? [6000, 10_001] : [])];
  };
  const starts = Array.from({ length: 10_002 }, (_, one) => one);
  const found = onCircles(starts, (one) => (one === 10_001 ? [] : readers(one)));
  expect(found.sort((one, other) => one - other)).toEqual(starts.slice(0, 10_001));
  expect(asked).toBe(10_001);
});
