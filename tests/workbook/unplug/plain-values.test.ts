import { describe, expect, it } from "vitest";
import { CellError } from "../../../src/functions/cell-error";
import { callScalar } from "../../../src/functions/call";
import { functionNamed, registry } from "../../../src/functions/registry";
import { address, block } from "../../../src/workbook/grid/plan/addresses";
import { PlainFormulas } from "../../../src/workbook/exchange/unplug/plain-formula";
import { WorkingCells } from "../../../src/workbook/exchange/unplug/working-cells";
import { uniformDraws } from "../../support/fermentation-truths";
import { plainForms } from "../../../src/workbook/exchange/unplug/plain";
import { NoPlainForm } from "../../../src/workbook/exchange/unplug/plain/no-plain-form";
import { isValueOnly } from "../../../src/workbook/exchange/unplug/plain/plain-form";
import type { SheetPlan } from "../../../src/workbook/grid/plan/sheet-plan";
import { paperGrid } from "../../support/paper-grid";
import { regionalIn } from "../../support/regional-formulas";
import { around, plainCase, typedCalls, type PlainCase } from "../../support/plain-cases";

/*
 * Every plain form against its call, by our own evaluator: in the inner loop, where `tests/samples/plain-formulas` asks LibreOffice
 * at the end. Over drawn arguments in both unit systems, at and beyond every limit, blank and wrong; numbers to 1e-6 of their size.
 */
const tolerance = 1e-6;
const draws = 4;

/** "" where the plain formulas agree with the call, else both. */
function difference({ label, cells, formulas, workings }: PlainCase): string {
  const written = [...formulas.map(({ text }, index) => [`AZ${index + 1}`, text] as const), ...workings];
  const grid = paperGrid({ cells: written.map(([address, content]) => ({ address, content })), names: [] } as unknown as SheetPlan, cells);
  const first = formulas[0]?.wanted;
  for (const [index, { wanted }] of formulas.entries()) {
    const got = grid.at(`AZ${index + 1}`) ?? "";
    const isError = got instanceof CellError;
    // A grid whose call has an error in its first cell has nothing to show in the others.
    if (index > 0 && typeof first === "object" && isError) continue;
    const agrees =
      typeof wanted === "object"
        ? isError
        : typeof wanted === "number"
          ? typeof got === "number" && Math.abs(got - wanted) <= tolerance * Math.max(1, Math.abs(wanted))
          : got === wanted;
    if (!agrees) return `${label}: cell ${index + 1} shows ${isError ? got.code : String(got)}, not ${JSON.stringify(wanted)}`;
  }
  return "";
}

/** Only of what is written out, as on the batch sheet: see below. */
const notOfRanges = ["GAUGE.SPREAD"];

describe("a plain form gives what its call gives", () => {
  it.each(registry.filter(({ id }) => !isValueOnly(plainForms.get(id) ?? { value: "" }) && !notOfRanges.includes(id)))(
    "$id",
    (descriptor) => {
      const differences: string[] = [];
      let numbers = 0;
      for (const [index, { label, typed }] of typedCalls(descriptor, draws, 7).entries()) {
        try {
          const made = plainCase(descriptor, typed, label, 1, index % 2 === 0);
          numbers += made.formulas.some(({ wanted }) => typeof wanted === "number" || (typeof wanted === "string" && wanted !== ""))
            ? 1
            : 0;
          const found = difference(made);
          if (found !== "") differences.push(found);
          if (index < 2) differences.push(...[...made.formulas.map(({ text }) => text), ...made.workings.values()].flatMap(regionalIn));
        } catch (problem) {
          // What a list of another shape has no plain form for, the call refuses as well.
          if (!(problem instanceof NoPlainForm)) throw problem;
        }
      }
      // A reading without a time is day 0 to the call and no reading to the plain formula: on the safe side.
      const excused = descriptor.id === "LOG.STEADY" ? /times (empty|hole)/ : /^$/;
      expect(differences.filter((text) => !excused.test(text) || /shows (steady|nearly)/.test(text))).toEqual([]);
      expect(numbers).toBeGreaterThan(3);
    },
  );
});

/** Limits that are in no argument's description, but in the sum: a hair on either side. Drawn arguments hardly ever come so near. */
describe("a plain form refuses what its call refuses, and no more", () => {
  it.each([
    // Two points more than expected are 3.4 volumes, 2.96 bar at 18 °C.
    ["PACK.SPUND", [1.025, 1.012, 2.4, 18, 2.94], true],
    ["PACK.SPUND", [1.025, 1.012, 2.4, 18, 2.98], false],
    ["PACK.SPUND", [1.0153, 1.012, 2.4, 18, 4], true],
    ["PACK.SPUND", [1.0156, 1.012, 2.4, 18, 4], false],
    ["PACK.SPUND", [1.025, 1.012, 0.85, 18, 4], true],
    ["PACK.SPUND", [1.025, 1.012, 0.88, 18, 4], false],
    ["HOPS.DRY", [321, 20], true],
    ["HOPS.DRY", [319, 20], false],
    ["HOPS.WEIGH", [30, 8, 0, 20, 1.05], true],
    ["HOPS.WEIGH", [30, 8, 1, 20, 1.05], false],
    ["HOPS.STAND", [50, 10, 20, 1.05, 20, 80, 80.01], true],
    ["HOPS.STAND", [50, 10, 20, 1.05, 20, 80, 80], false],
    ["HOPS.STAND", [50, 10, 20, 1.05, 20, 80, 79.99], false],
    ["HOPS.STAND", [50, 0.1, 20, 1.05, 20, 80, 70], true],
    ["HOPS.STAND", [50, 10, 20, 1.05, 20, 80, 70, 240], false],
    ["YEAST.STARTER", [100, 645, null, null, "stirred"], true],
    ["YEAST.STARTER", [100, 642, null, null, "stirred"], false],
    ["YEAST.STEPS", [100, 1385], true],
    ["YEAST.STEPS", [100, 1379], false],
    ["YEAST.AGED", [46114, 46113, 80], true],
    ["HEAT.COUNTERFLOW", [50, 50, 2, 6], true],
    ["HEAT.COUNTERFLOW", [95, 12, 4, 4], false],
    ["HEAT.COUNTERFLOW", [95, 12, 6, 2], false],
    ["BEER.ADDED", [1.05, 10, [[6.1, 100]], 1.01], true],
    ["BEER.ADDED", [1.05, 10, [[5.5, 100]], 1.01], false],
  ] as const)("%s%j", (id, typed, isRefused) => {
    const made = plainCase(functionNamed(id), [...typed], id, 1, false);
    expect(typeof made.formulas[0]?.wanted === "object").toBe(isRefused);
    expect(difference(made)).toBe("");
  });
});
it("GAUGE.SPREAD of alcohol, wherever that is straight; elsewhere #N/A, where the call draws", () => {
  const uniform = uniformDraws(5);
  const spread = functionNamed("GAUGE.SPREAD");
  let numbers = 0;
  for (let index = 0; index < 60; index += 1) {
    const og = Number((1.03 + 0.06 * uniform()).toFixed(4));
    const fg = Number((og - 0.05 * uniform()).toFixed(4));
    const working = new WorkingCells({ row: 1, column: 300 });
    const plain = new PlainFormulas(around(new Map()), working.put);
    const formula = plain.cell('=GAUGE.SPREAD("BEER.ABV",CHOOSE({1,2},A1,B1),{0.002,0.002})'.replace("=", "=GYLE."), one, {
      row: 0,
      column: 0,
    });
    const cells = working
      .taken()
      .flatMap(({ range, contents }) =>
        contents.flatMap((row, r) =>
          row.map((content, c) => ({ address: address(block(range).from.row + r, block(range).from.column + c), content })),
        ),
      );
    const grid = paperGrid(
      { cells: [...cells, { address: "C1", content: formula }], names: [] } as unknown as SheetPlan,
      new Map([
        ["A1", og],
        ["B1", fg],
      ]),
    );
    const [got, wanted] = [grid.at("C1"), callScalar(spread, ["BEER.ABV", [[og, fg]], [[0.002, 0.002]]])];
    if (got instanceof CellError) expect([got.code, og - fg < 0.005]).toEqual(["#N/A", true]);
    else {
      numbers += 1;
      expect(got).toBeCloseTo(wanted as number, 9);
    }
  }
  expect(numbers).toBeGreaterThan(50);
});
const one = { rows: 1, columns: 1 };
