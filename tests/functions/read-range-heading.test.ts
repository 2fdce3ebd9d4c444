import { describe, expect, it } from "vitest";
import { ArgumentProblem } from "../../src/functions/cell-error";
import type { Matrix, TableParameter } from "../../src/functions/describe";
import { missing } from "../../src/functions/read-cell";
import { readTable } from "../../src/functions/read-range";
import { choice, minutes, smallMass } from "../../src/functions/vocabulary";

const steps: TableParameter = {
  kind: "table",
  doc: "steps",
  columns: { step: { kind: "text", doc: "what to do" }, part: choice("when", ["before", "boil"]), minutes: minutes("how long") },
  layouts: [["step", "part", "minutes"]],
};

const hops: TableParameter = {
  kind: "table",
  doc: "hops",
  columns: { mass: smallMass("hops"), minutes: minutes("in the boil") },
  layouts: [
    [null, "mass", "minutes"],
    ["mass", "minutes"],
  ],
};

function rowsOf(parameter: TableParameter, range: Matrix): { rows: number; height: number; first: Record<string, unknown> | undefined } {
  const table = readTable("table", range, parameter, "metric");
  if (table === missing) return { rows: 0, height: 0, first: undefined };
  return { rows: table.length, height: table.height, first: table[0] };
}

function problemOf(parameter: TableParameter, range: Matrix): string {
  try {
    readTable("table", range, parameter, "metric");
  } catch (problem) {
    if (problem instanceof ArgumentProblem) return problem.message;
    throw problem;
  }
  return "no problem";
}

describe("the heading row of a table", () => {
  it("is skipped when the first column is free text", () => {
    const found = rowsOf(steps, [
      ["What", "When", "Minutes"],
      ["Heat the water", "before", 20],
    ]);
    expect(found).toMatchObject({ rows: 1, height: 1, first: { step: "Heat the water", rowNumber: 1 } });
  });

  it("is not seen in a first row that holds a step", () => {
    expect(
      rowsOf(steps, [
        ["Heat the water", "before", 20],
        ["Weigh the hops", "before", 5],
      ]),
    ).toMatchObject({ rows: 2, height: 2 });
    expect(
      rowsOf(steps, [
        ["Heat the water", "Before", ""],
        ["Weigh the hops", "before", 5],
      ]).rows,
    ).toBe(2);
  });

  it("is skipped when a passed-over column of names comes first", () => {
    expect(
      rowsOf(hops, [
        ["Hop", "Grams", "Min"],
        ["Cascade", 28, 60],
      ]),
    ).toMatchObject({ rows: 1, first: { mass: 28, minutes: 60 } });
    expect(
      rowsOf(hops, [
        ["Cascade", 28, 60],
        ["Fuggle", 10, 5],
      ]).rows,
    ).toBe(2);
  });

  it("may leave cells empty", () => {
    expect(
      rowsOf(hops, [
        ["Grams", null],
        [28, 60],
      ]),
    ).toMatchObject({ rows: 1, height: 1 });
    expect(
      rowsOf(hops, [
        ["", "Minutes"],
        [28, 60],
      ]),
    ).toMatchObject({ rows: 1, height: 1 });
  });

  it("is not made of a slip of the hand: that is reported with its row", () => {
    expect(
      problemOf(hops, [
        ["28 g", 60],
        [10, 5],
      ]),
    ).toBe('table row 1: mass must be a number, not the text "28 g"; it must be above 0 and at most 50000 g (type 28 alone)');
    expect(
      problemOf(hops, [
        ["-5", ".5"],
        [10, 5],
      ]),
    ).toContain("row 1: mass must be a number");
    expect(
      problemOf(hops, [
        ["some", 60],
        [10, 5],
      ]),
    ).toContain("row 1: mass must be a number");
    expect(
      problemOf(steps, [
        ["Mash", "before", "an hour"],
        ["Sparge", "before", 20],
      ]),
    ).toContain("row 1: minutes must be a number");
  });

  it("counts in the row that a message names", () => {
    expect(
      problemOf(hops, [
        ["Grams", "Minutes"],
        [28, 60],
        ["lots", 5],
      ]),
    ).toContain("table row 3: mass");
  });

  it("alone is a table that is not filled in yet", () => {
    expect(
      readTable(
        "table",
        [
          ["What", "When", "Minutes"],
          ["", "", ""],
        ],
        steps,
        "metric",
      ),
    ).toBe(missing);
  });
});
