import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { compareWithExcel } from "../support/excel-computed";
import { openTestBench } from "../support/test-bench";

/** How many formula cells of a workbook there are, and which of them are known to differ from what Excel computed. */
const workbooks: readonly (readonly [name: string, cells: number, known: string])[] = [
  ["SUMIFS", 285, ""],
  ["COUNT", 61, ""],
  // Texts that look like errors, "#N/A", are told apart from errors in Excel only.
  [
    "COUNTIF",
    531,
    "Rows!AA2 Rows!AB2 Rows!AC2 Rows!AD2 Rows!V4 Rows!W4 Rows!AA4 Rows!AB4 Rows!AC4 Rows!AD4 Rows!V8 Rows!W8 Rows!V10 Rows!W10 Columns!D20 Columns!H20 Columns!J20 Columns!D21 Columns!H21 Columns!J21 Columns!B27 Columns!D27 Columns!B28 Columns!D28 Columns!B29 Columns!D29 Columns!B30 Columns!D30",
  ],
  // A number that is pieced together as a text, given by itself.
  ["AVERAGE", 52, "Sheet1!M15 Sheet1!M16"],
  // Search by halves through a list with the same value several times.
  [
    "XLOOKUP",
    439,
    "MultipleElements!M4 MultipleElements!N4 MultipleElements!M5 MultipleElements!N5 MultipleElements!M6 MultipleElements!N6 MultipleElements!M7 MultipleElements!N7 MultipleElements!E8 MultipleElements!N9 MultipleElements!N10",
  ],
  ["FIND_SEARCH", 62, "Sheet1!E29 Sheet1!E30"],
  ["CORREL_SLOPE_INTERCEPT_RSQ_STEYX", 5, ""],
  ["AND_OR_XOR", 317, ""],
  ["DCOUNT_DCOUNTA_DGET_DPRODUCT", 212, "DCOUNT_DCOUNTA!B66"],
  // A name of LET that is given once more within.
  ["LET", 6, "Sheet1!D6"],
  // INDIRECT of what is no reference, and a step of OFFSET off the sheet.
  ["ROW_COLUM", 175, "ROW_COLUMN!K21 ROW_COLUMN!L21 ROW_COLUMN!K22 ROW_COLUMN!L22 OFFSET!K48"],
  ["gantt_project_tracker", 441, ""],
  ["simple_functions", 199, ""],
  // Filtered rows in SUBTOTAL, and headings with marks or blanks of their own.
  [
    "tables",
    212,
    "Hidden!H5 Hidden!I5 Hidden!B6 Hidden!B8 Hidden!B9 Hidden!B11 Hidden!D13 filters!B8 filters!B10 Functions_Filters!D46 Functions_Filters!D47 Functions_Filters!E48 Functions_Filters!D50 Functions_Filters!D54 No_Headers!B8 No_Headers!C8 No_Headers!D8 No_Headers!E8 No_Headers!F8 No_Headers!E11 Escape!E2 Escape!E3 Escape!E4 Escape!E5 Escape!B6 Escape!C6 Escape!D6 Escape!E6 Escape!C7 Escape!C8 Escape!C9 Escape!C10",
  ],
];

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
});
afterAll(() => bench.dispose());

describe("what Excel computed is computed here", () => {
  it.each(workbooks)("in %s.xlsx, in all of its %i cells but for: %s", async (name, cells, known) => {
    const bytes = readFileSync(new URL(`../../samples/excel-computed/${name}.xlsx`, import.meta.url));
    const { compared, differ } = await compareWithExcel(bench, bytes);
    expect(compared).toBe(cells);
    expect(differ.map(({ sheet, cell }) => `${sheet.replaceAll(" ", "_")}!${cell}`).join(" ")).toBe(known);
  });
});
