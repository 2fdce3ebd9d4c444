import { describe, expect, it } from "vitest";
import { CellError } from "../../../src/functions/cell-error";
import { registry } from "../../../src/functions/registry";
import { plainForms } from "../../../src/workbook/exchange/unplug/plain";
import { isValueOnly, NoPlainForm } from "../../../src/workbook/exchange/unplug/plain/plain-form";
import type { SheetPlan } from "../../../src/workbook/grid/plan/sheet-plan";
import { paperGrid } from "../../support/paper-grid";
import { plainCase, typedCalls, type PlainCase } from "../../support/plain-cases";

/*
 * Every plain form against its call, by our own evaluator: in the inner loop, where `tests/samples/plain-formulas` asks LibreOffice
 * at the end. Over drawn arguments in both unit systems, at and beyond every limit, blank and wrong; numbers to 1e-6 of their size.
 */
const tolerance = 1e-6;
const draws = 4;

/** "" where the plain formulas agree with the call, else both. */
function difference({ label, cells, formulas }: PlainCase): string {
  const grid = paperGrid(
    { cells: formulas.map(({ text }, index) => ({ address: `AZ${index + 1}`, content: text })), names: [] } as unknown as SheetPlan,
    cells,
  );
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

describe("a plain form gives what its call gives", () => {
  it.each(registry.filter(({ id }) => !isValueOnly(plainForms.get(id) ?? { value: "" })))("$id", (descriptor) => {
    const differences: string[] = [];
    let numbers = 0;
    for (const [index, { label, typed }] of typedCalls(descriptor, draws, 7).entries()) {
      try {
        const made = plainCase(descriptor, typed, label, 1, index % 2 === 0);
        numbers += made.formulas.some(({ wanted }) => typeof wanted === "number" || (typeof wanted === "string" && wanted !== "")) ? 1 : 0;
        const found = difference(made);
        if (found !== "") differences.push(found);
      } catch (problem) {
        // What a list of another shape has no plain form for, the call refuses as well.
        if (!(problem instanceof NoPlainForm)) throw problem;
      }
    }
    // A reading without a time is day 0 to the call and no reading to the plain formula: on the safe side.
    const excused = descriptor.id === "LOG.STEADY" ? /times (empty|hole)/ : /^$/;
    expect(differences.filter((text) => !excused.test(text) || /shows (steady|nearly)/.test(text))).toEqual([]);
    expect(numbers).toBeGreaterThan(3);
  });
});
