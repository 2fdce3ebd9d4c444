import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError } from "../../../src/functions/cell-error";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { block } from "../../../src/workbook/grid/plan/addresses";
import { batchOnItsWay } from "../../support/arbitrary-batch";
import { drawnChange } from "../../support/drawn-changes";
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
      const shown = plan.cells.flatMap(({ address: cell, spillsTo }) => (spillsTo ? cellsOf(`${cell}:${spillsTo}`) : [cell]));
      const different = shown.flatMap((cell) => {
        const [one, other] = [ours.at(cell), theirs.at(cell)];
        return cell === "G1" || agree(one, other) ? [] : [`${cell}: ${words(one)} became ${words(other)}`];
      });
      const still = new Set(["curve", "forecast"].flatMap((name) => cellsOf(plan.names.find((one) => one.name === name)?.range ?? "A1")));
      const said = different.filter((text) => isOld && (still.has(text.split(":")[0] ?? "") || onForecast(plan, text)));
      expect([[...typed], different.filter((text) => !said.includes(text))]).toEqual([[...typed], []]);
    }
  });
});

/** What the sheet makes of the forecast. */
const onForecast = (plan: ReturnType<typeof planBatch>, text: string): boolean =>
  plan.cells.some(
    ({ address: cell, content }) => cell === text.split(":")[0] && typeof content === "string" && /end_expected|forecast_/.test(content),
  );

const words = (cell: unknown): string => (cell instanceof CellError ? cell.code : JSON.stringify(cell));

function agree(one: unknown, other: unknown): boolean {
  if (one instanceof CellError || other instanceof CellError) return one instanceof CellError && other instanceof CellError;
  if (typeof one === "number" && typeof other === "number") return Math.abs(one - other) <= 1e-6 * Math.max(1, Math.abs(one));
  return (one ?? "") === (other ?? "");
}

function cellsOf(range: string): string[] {
  const { from, to } = block(range);
  return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
    Array.from({ length: to.column - from.column + 1 }, (__, column) => `${letters(from.column + column)}${from.row + row}`),
  ).flat();
}
const letters = (column: number): string =>
  (column > 26 ? String.fromCharCode(64 + Math.floor((column - 1) / 26)) : "") + String.fromCharCode(65 + ((column - 1) % 26));
