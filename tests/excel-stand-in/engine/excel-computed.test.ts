import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { compareWithExcel } from "../support/excel-computed";
import { openTestBench } from "../support/test-bench";

/** How many formula cells of a workbook there are, and how many of them are known to differ from what Excel computed. */
const workbooks: readonly (readonly [name: string, cells: number, known: number])[] = [
  ["SUMIFS", 285, 0],
  ["COUNT", 61, 0],
  ["COUNTIF", 531, 28],
  ["AVERAGE", 52, 2],
  ["XLOOKUP", 439, 11],
  ["FIND_SEARCH", 62, 2],
  ["CORREL_SLOPE_INTERCEPT_RSQ_STEYX", 5, 0],
  ["AND_OR_XOR", 317, 0],
  ["DCOUNT_DCOUNTA_DGET_DPRODUCT", 212, 1],
  ["LET", 6, 1],
  ["ROW_COLUM", 175, 7],
  ["gantt_project_tracker", 441, 0],
  ["simple_functions", 199, 0],
  ["tables", 212, 32],
];

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
});
afterAll(() => bench.dispose());

describe("what Excel computed is computed here", () => {
  it.each(workbooks)("in %s.xlsx: %i cells, but for %i", async (name, cells, known) => {
    const bytes = readFileSync(new URL(`../../samples/excel-computed/${name}.xlsx`, import.meta.url));
    const { compared, differ } = await compareWithExcel(bench, bytes);
    expect(compared).toBe(cells);
    expect(differ.length, JSON.stringify(differ.slice(0, 3))).toBeLessThanOrEqual(known);
  });
});
