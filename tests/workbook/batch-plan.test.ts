import { describe, expect, it } from "vitest";
import { sheetFigures } from "../../src/build/sheet-figures";
import { planSeason } from "../../src/workbook/sheets/season/season-plan";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { cellRange } from "../../src/workbook/grid/plan/cell-range";
import { block, position } from "../../src/workbook/grid/plan/addresses";
import { marginsPt } from "../../src/workbook/grid/plan/print-scale";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { rowHeightPoints } from "../../src/workbook/grid/plan/sheet-builder";
import { calculatedSheet } from "../support/calculated-sheet";

const choices = {
  id: "test",
  sheetName: "Batch 9",
  batchName: "Nine",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "extract",
} as const;
const plans = [
  ["sample", planBatch(firstExtractBatch())],
  ["empty metric", planBatch(newBatch(choices))],
  ["example us", planBatch(exampleBatch({ ...choices, units: "us", volume: 5, topUp: 2.5, method: "extract" }))],
  ["all-grain us", planBatch(exampleBatch({ ...choices, units: "us", volume: 5, method: "all-grain" }))],
  ["all-grain metric, empty", planBatch(newBatch({ ...choices, method: "all-grain" }))],
] as const;

/** Fit to one page wide: the paper less its margins, by the columns' widths (ECMA-376 part 1, 18.3.1.13: 7 pixels a character plus 5, at 96 an inch). */
const printedScale = ({ columnWidths, print }: SheetPlan): number =>
  Math.min(
    1,
    ((print.paper === "a4" ? 595 : 612) - 2 * marginsPt.side) /
      columnWidths.slice(0, 9).reduce((sum, characters) => sum + (characters * 7 + 5) * 0.75, 0),
  );

/** Deepest brackets outside of texts: every nested call has one. */
function depthOf(formula: string): number {
  let depth = 0;
  let deepest = 0;
  for (const sign of formula.replace(/"[^"]*"/g, "")) {
    if (sign === "(") deepest = Math.max(deepest, (depth += 1));
    if (sign === ")") depth -= 1;
  }
  return deepest;
}

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
    // Reading, gravity to expect, where it stands, verdict on the pressure, and only then a sugar: each stands before the next.
    expect(deepestChain).toBeLessThanOrEqual(5);
  });

  it("asks nothing of Excel that it refuses: formulas of at most 8192 characters, nested at most 64 deep", () => {
    // Microsoft, "Excel specifications and limits".
    for (const { address, content } of plan.cells) {
      if (typeof content !== "string" || !content.startsWith("=")) continue;
      expect(content.length, address).toBeLessThanOrEqual(8192);
      expect(depthOf(content), address).toBeLessThanOrEqual(64);
    }
  });

  it("gives the rows that are filled in with a pen what room the pages have left", () => {
    const heightOf = (row: number) => plan.rowHeights.find((height) => height.row === row)?.points ?? rowHeightPoints;
    const of = (name: string) => heightOf(block(plan.names.find((found) => found.name === name)?.range ?? "").from.row);
    expect(of("reading_times")).toBeGreaterThanOrEqual(17);
    expect(of("scores")).toBeGreaterThanOrEqual(17);
    expect(of("happened")).toBeGreaterThanOrEqual(13.5);
    expect(of("notes")).toBeGreaterThanOrEqual(40);
    // As printed, in points: a fifth of an inch is what a pen needs.
    expect(of("reading_times") * printedScale(plan)).toBeGreaterThan(12);
  });

  it("prints on three pages, each between two sections, none too full", () => {
    const heightOf = (row: number) => plan.rowHeights.find((height) => height.row === row)?.points ?? rowHeightPoints;
    const sections = plan.cells.filter(({ style }) => style === "section").map(({ address }) => block(address).from.row);
    const starts = [1, ...plan.print.breaksBeforeRow, block(plan.print.area).to.row + 1];
    expect(starts).toHaveLength(4);
    for (const row of plan.print.breaksBeforeRow) expect(sections).toContain(row);
    for (let page = 1; page < starts.length; page += 1) {
      let points = 0;
      for (let row = starts[page - 1]!; row < starts[page]!; row += 1) points += heightOf(row);
      expect(points * printedScale(plan)).toBeLessThanOrEqual((plan.print.paper === "a4" ? 842 : 792) - marginsPt.top - marginsPt.bottom);
    }
  });
});

describe.each(["extract", "all-grain"] as const)("a reader who has never brewed (%s)", (method) => {
  const plan = planBatch(exampleBatch({ ...choices, units: "metric", volume: 20, method }));
  const sheet = calculatedSheet(plan);
  const [head = 0] = plan.cells.filter(({ content }) => content === "What to do").map(({ address }) => position(address).row);

  it.each([/pitch/i, /\brack/i, /trub/i, /airlock/i, /volumes of CO2/i, /apparent attenuation/i])(
    "finds a note where the sheet first says %s",
    (word) => {
      const rows = Array.from({ length: 140 }, (_, index) => index + 1);
      const says = (row: number) => [1, 2, 3, 4, 5, 6, 7, 8, 9].some((column) => word.test(String(sheet.at(row, column))));
      const first = rows.find(says)!;
      // What the clock's lines say is explained at their head.
      const noted = first > head && first < head + 24 ? head : first;
      const notes = plan.notes.filter(({ address }) => position(address).row === noted).map(({ text }) => text);
      expect(notes.join(" "), `row ${first}`).toMatch(
        word.source.includes("volumes") ? /litres of carbon dioxide/i : word.source.includes("attenuation") ? /share of the sugar/i : word,
      );
    },
  );
});

describe("the fermentation chart", () => {
  it.each([
    ["metric", 1, 0],
    ["us", 1.8, 32],
  ] as const)("shows every temperature that ferments on one axis, in which a degree is no cliff (%s)", (units, slope, zero) => {
    const [chart] = planBatch(firstExtractBatch(units)).charts;
    const [low, high = NaN] = chart!.secondary!.span!;
    // Lager yeast works from about 4 °C, the warmest farmhouse yeasts to about 42 °C (common practice).
    expect(low).toBeLessThanOrEqual(4 * slope + zero);
    expect(high).toBeGreaterThanOrEqual(42 * slope + zero);
    expect((high - low) / slope).toBeGreaterThanOrEqual(40);
  });

  it("and those of the season begin where nothing is: a point of efficiency or bitterness, or a degree, is no cliff", () => {
    const { charts } = planSeason({ sheetName: "Season", units: "metric", today: 46270, rows: [] });
    const spans = charts.flatMap(({ name, vertical, secondary }) =>
      [vertical, ...(secondary ? [secondary] : [])].map(({ span }) => [name, span]),
    );
    // Water has a specific gravity of 1; the marks of a tasting go up to 5. Columns stand on the ground in any case.
    expect(spans).toEqual([
      ["Season", undefined],
      ["Gravity planned and reached", [1]],
      ["Efficiency and bitterness", [0, 100]],
      ["Efficiency and bitterness", [0]],
      ["Scores", [0, 5]],
    ]);
    expect(charts[0]!.series.every(({ look }) => look === "columns")).toBe(true);
  });
});
