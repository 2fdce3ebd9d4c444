import { expect, it } from "vitest";
import { withoutSpilledFormulas } from "../../src/workbook/grid/read/spilled-formulas";

/* What Excel may answer for a formula that fills two rows of two, beside the same formula typed into two cells. */
const spill = "=SORT(D1:E2)";

it("keeps a spilling formula in its first cell only", () => {
  const formulas = [
    ["", spill, spill, "=1+1"],
    ["x", spill, spill, 7],
  ];
  const values = [
    ["", 1, 2, 2],
    ["x", 3, 2, 7],
  ];
  expect(withoutSpilledFormulas(formulas, values)).toEqual([
    ["", spill, 2, "=1+1"],
    ["x", 3, 2, 7],
  ]);
});

it("leaves alone what somebody typed into neighbours, and what means another thing in each row", () => {
  const formulas = [
    ["=$A$9*2", "=[@Mass]*2", "=ROW()", "=A9"],
    ["=$A$9*2", "=[@Mass]*2", "=ROW()", "=A10"],
  ];
  const values = [
    [4, 1, 1, 5],
    [4, 2, 2, 6],
  ];
  expect(withoutSpilledFormulas(formulas, values)).toBe(formulas);
});
