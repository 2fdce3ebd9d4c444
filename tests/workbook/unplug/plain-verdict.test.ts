import { expect, it } from "vitest";
import { functionNamed } from "../../../src/functions/registry";
import type { SheetPlan } from "../../../src/workbook/grid/plan/sheet-plan";
import { drawnLog } from "../../support/drawn-log";
import { PlainFormulas } from "../../../src/workbook/exchange/unplug/plain-formula";
import { uniformDraws } from "../../support/fermentation-truths";
import { paperGrid } from "../../support/paper-grid";
import { around, plainCase } from "../../support/plain-cases";

it("gives the verdict of the call, with a day from which readings count and without, over logs that look like logs", () => {
  const uniform = uniformDraws(12);
  const steady = functionNamed("LOG.STEADY");
  const words = new Map<string, number>();
  for (let index = 0; index < 800; index += 1) {
    const { label, cells, formulas } = plainCase(steady, drawnLog(uniform), `log ${index}`, 1, index % 2 === 0);
    const formula = formulas[0]?.text ?? "";
    expect(formula.length).toBeLessThan(8000);
    const grid = paperGrid({ cells: [{ address: "Z1", content: formula }], names: [] } as unknown as SheetPlan, cells);
    expect(grid.at("Z1"), label).toBe(formulas[0]?.wanted);
    const word = String(formulas[0]?.wanted);
    words.set(word, (words.get(word) ?? 0) + 1);
  }
  for (const word of ["not begun", "working", "nearly", "steady", "stalled", "rising"]) expect(words.get(word), word).toBeGreaterThan(10);
}, 60_000);

it("is short enough for Excel in the words of the batch sheet", () => {
  const none = around(new Map());
  const plain = new PlainFormulas({
    ...none,
    shapeOf: (name) => (name === "reading_times" || name === "gravities" ? { rows: 16, columns: 1 } : { rows: 1, columns: 1 }),
  });
  expect(
    plain.cell("=GYLE.LOG.STEADY(reading_times,gravities,0.001,fg_expected,og,count_from)", { rows: 1, columns: 1 }, { row: 0, column: 0 }),
  ).toMatch(/^=IF\(/);
});
