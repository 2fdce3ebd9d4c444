import { describe, expect, it } from "vitest";
import { sheetFigures } from "../../src/build/sheet-figures";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { planBatch } from "../../src/workbook/batch/plan";
import { cellRange } from "../../src/workbook/plan/cell-range";
import { block } from "../../src/workbook/plan/addresses";

const choices = { id: "test", sheetName: "Batch 9", batchName: "Nine", brewedOn: 46270, volume: 20, units: "metric", topUp: 0, method: "extract" } as const;
const plans = [
  ["sample", planBatch(firstExtractBatch())],
  ["empty metric", planBatch(newBatch(choices))],
  ["example us", planBatch(exampleBatch({ ...choices, units: "us", volume: 5, topUp: 2.5, method: "extract" }))],
  ["all-grain us", planBatch(exampleBatch({ ...choices, units: "us", volume: 5, method: "all-grain" }))],
  ["all-grain metric, empty", planBatch(newBatch({ ...choices, method: "all-grain" }))],
] as const;

describe.each(plans)("the plan of a batch sheet (%s)", (_, plan) => {
  const covered = plan.cells.map((cell) => block(cellRange(cell)));

  it("plans nothing twice: no two cells or merged blocks overlap", () => {
    const seen = new Set<string>();
    for (const { from, to } of covered) {
      for (let column = from.column; column <= to.column; column += 1) {
        const key = `${column},${from.row}`;
        expect(seen.has(key), `row ${from.row}, column ${column}`).toBe(false);
        seen.add(key);
      }
    }
    expect(seen.size).toBeGreaterThan(500);
  });

  it("names nothing that Excel reads as a cell address", () => {
    for (const { name } of plan.names) expect(name).toMatch(/^(?![a-z]{1,3}\d+$)(?![rc]\d*$)[a-z][a-z_]*$/);
  });

  it("uses only names that it defines", () => {
    const defined = new Set(plan.names.map(({ name }) => name));
    for (const { content } of plan.cells) {
      if (typeof content !== "string" || !content.startsWith("=")) continue;
      const words = content.replace(/"[^"]*"/g, "").match(/(?<![A-Za-z.])[a-z][a-z_]+(?![A-Za-z.(])/g) ?? [];
      for (const word of words) expect(defined, `${word} in ${content}`).toContain(word);
    }
  });

  it("keeps within the targets for calls and chains", () => {
    const { calls, deepestChain } = sheetFigures(plan);
    expect(calls).toBeGreaterThan(25);
    expect(calls).toBeLessThanOrEqual(60);
    expect(deepestChain).toBeLessThanOrEqual(3);
  });

  it("prints on two pages: one break, and a scale that a reader can read", () => {
    expect(plan.print.breaksBeforeRow).toHaveLength(1);
    expect(plan.print.scalePercent).toBeGreaterThanOrEqual(60);
  });
});
