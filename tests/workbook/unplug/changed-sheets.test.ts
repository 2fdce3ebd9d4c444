import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError } from "../../../src/functions/cell-error";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { batchOnItsWay } from "../../support/arbitrary-batch";
import { cellsOfRange, drawnChange, madeFrom } from "../../support/drawn-changes";
import "../../support/fixed-seed";
import { uniformDraws } from "../../support/fermentation-truths";
import { paperGrid } from "../../support/paper-grid";
import { paperUnplugged } from "../../support/paper-unplugged";

/*
 * In the inner loop: drawn batch sheets and their unplugged copies with the same things typed into both, worked out by our own
 * evaluator. What the copy shows is what the sheet shows, or it says that something is out of date. The samples ask LibreOffice.
 */
const sheets = fc.sample(batchOnItsWay, { numRuns: 6, seed: 31 });
const changesOfEach = 12;

describe.each(sheets.map((batch, index) => ({ batch, index })))("unplugged sheet $index", ({ batch, index }) => {
  it("follows what is typed", () => {
    const plan = planBatch(batch);
    const copy = paperUnplugged(plan);
    const uniform = uniformDraws(100 + index);
    for (let turn = 0; turn < changesOfEach; turn += 1) {
      const typed = drawnChange(plan, uniform);
      const [ours, theirs] = [paperGrid(plan, typed), paperGrid(copy, typed)];
      const isOld = String(theirs.at("G1")).startsWith("Out of date");
      const still = isOld ? madeFrom(plan, ["curve", "forecast"]) : new Set<string>();
      const different = plan.cells
        .flatMap(({ address: cell, spillsTo }) => (spillsTo === undefined ? [cell] : cellsOfRange(`${cell}:${spillsTo}`)))
        .filter((cell) => cell !== "G1" && !still.has(cell))
        .flatMap((cell) =>
          agree(ours.at(cell), theirs.at(cell)) ? [] : [`${cell}: ${words(ours.at(cell))} became ${words(theirs.at(cell))}`],
        );
      expect([[...typed], different]).toEqual([[...typed], []]);
    }
  });
});

const words = (cell: unknown): string => (cell instanceof CellError ? cell.code : JSON.stringify(cell));

function agree(one: unknown, other: unknown): boolean {
  if (one instanceof CellError || other instanceof CellError) return one instanceof CellError && other instanceof CellError;
  if (typeof one === "number" && typeof other === "number") return Math.abs(one - other) <= 1e-6 * Math.max(1, Math.abs(one));
  return (one ?? "") === (other ?? "");
}
