import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
  // Each comparison twice: the engine used to answer differently the second time.
  await enter(bench, {
    A1: 0,
    B1: '=A1=""',
    C1: '=IF(A1="","blank",A1)',
    D1: '=IF(A1="","blank",A1)',
    E1: '=A1="0"',
    F1: '=A1="0"',
    A2: "Pale",
    B2: '=A2="pale"',
    C2: '=A2="pale"',
    B3: '=A3=""',
    C3: '=A3=""',
    D3: "=A3=0",
    E3: "=A3=0",
  });
}, START_TIMEOUT);
afterAll(() => bench.dispose());

it.each([
  ["B1", false],
  ["C1", 0],
  ["D1", 0],
  ["E1", false],
  ["F1", false],
  ["B2", true],
  ["C2", true],
  ["B3", true],
  ["C3", true],
  ["D3", true],
  ["E3", true],
])("nought, an empty text, an empty cell and a text of digits are told apart as Excel does (%s is %j)", (cell, expected) =>
  expect(bench.valueAt("Sheet1", cell)).toBe(expected),
);
