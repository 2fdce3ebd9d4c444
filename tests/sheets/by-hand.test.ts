import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { CellError } from "../../src/functions/cell-error";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";
import { paperGrid } from "../support/paper-grid";
import { cellOfLine, difference, handCards, leftOut, nameOfCell, wholeCards } from "./by-hand/cards";

/*
 * Batches calculated by hand, every figure that a brewer reads, from textbook equations and without a look at our code
 * (by-hand/README.md). Samples made by the same code that they test would hold a doubled sugar dose just as well.
 */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => {
  bench.dispose();
});

describe.each(handCards())("the card of $title", ({ title, contents, lines }) => {
  const batch = contents();
  const plan = planBatch(batch);
  const shows = (cell: string) => bench.valueAt(batch.sheetName, cell);
  beforeAll(async () => {
    await insertOn(bench, batch);
  }, benchTimeout);

  it("has a sum, a source and a reason for its tolerance beside every figure", () => {
    expect(lines.length).toBeGreaterThan(2);
    if (wholeCards.includes(title)) expect(lines.length).toBeGreaterThan(80);
    for (const line of lines)
      for (const cell of [line.sum, line.source, line["why so much"]]) expect(cell.length, line.name).toBeGreaterThan(3);
    expect(new Set(lines.map(({ name }) => name)).size).toBe(lines.length);
  });

  it.each(lines)("$name", (line) => expect(difference(plan, line, shows)).toBeUndefined());

  it("is worked out alike on the paper grid, which the mutations go by", () => {
    const paper = paperGrid(plan);
    const apart = plan.cells
      .filter(({ content }) => typeof content === "string" && content.startsWith("="))
      .flatMap(({ address }) => {
        const [one, other] = [shows(address) ?? "", paper.at(address) ?? ""];
        const same =
          other instanceof CellError
            ? String(one).startsWith("#")
            : typeof one === "number" && typeof other === "number"
              ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one))
              : one === other;
        return same ? [] : [`${address}: ${String(one)} | ${other instanceof CellError ? other.code : String(other)}`];
      });
    expect(apart).toEqual([]);
  });
});

it("no number that a sheet calculates is missing from the tables", () => {
  const missing = new Set<string>();
  for (const { title, contents, lines } of handCards()) {
    if (!wholeCards.includes(title)) continue;
    const plan = planBatch(contents());
    const paper = paperGrid(plan);
    for (const { address, content } of plan.cells) {
      if (typeof content !== "string" || !content.startsWith("=") || typeof paper.at(address) !== "number") continue;
      const name = nameOfCell(plan, address);
      if (!(name in leftOut) && !lines.some((line) => line.name === name)) missing.add(`${title}: ${name}`);
    }
  }
  expect([...missing]).toEqual([]);
});

/** Each of these once passed every test of the sheet. */
it.each([
  ["extract-us", "sugar_mass", 2],
  ["partial-mash-keg", "keg_pressure", 2],
  ["extract-us", "energy", 2],
  ["extract-us", "cost_plan", 2],
  ["all-grain-metric", "chill_minutes", 1.3],
  ["extract-us", "residual_gas", 2],
  ["all-grain-metric", "bottle_pressure", 0.8],
] as const)("%s: %s times %d is noticed", (title, name, factor) => {
  const card = handCards().find((candidate) => candidate.title === title)!;
  const [plan, line] = [planBatch(card.contents()), card.lines.find((candidate) => candidate.name === name)!];
  const cell = plan.cells.find(({ address }) => address === cellOfLine(plan, name, () => null))!;
  const right = paperGrid(plan);
  const wrong = paperGrid(plan, new Map([[cell.address, `=(${String(cell.content).slice(1)})*${factor}`]]));
  expect(difference(plan, line, (at) => right.at(at))).toBeUndefined();
  expect(difference(plan, line, (at) => wrong.at(at))).toBeDefined();
});
