import { describe, expect, it } from "vitest";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { styles } from "../../src/workbook/grid/plan/styles";

const batches = [
  firstExtractBatch(),
  exampleBatch({
    id: "a1",
    sheetName: "Mashed",
    batchName: "Mashed",
    brewedOn: 46270,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "all-grain",
  }),
];

/** What of a cell's look is still there on a black-and-white print: shade behind it, or a line below it. */
const withoutColour = (style: keyof typeof styles) => {
  const { fill, line } = styles[style];
  return { shade: fill !== undefined, line: line !== undefined };
};

describe("what is typed and what is computed are told apart by more than colour, as the guide says", () => {
  it.each(batches.map((batch) => [batch.sheetName, batch] as const))(
    "on %s: a line below the one, a shade behind the other",
    (_, batch) => {
      const { cells } = planBatch(batch);
      const inputs = cells.filter(({ style }) => style.startsWith("input"));
      const results = cells.filter(({ style }) => /^(result|key)/.test(style));
      expect(inputs.length).toBeGreaterThan(100);
      expect(results.length).toBeGreaterThan(40);
      for (const { address, style } of inputs) expect(withoutColour(style), address).toEqual({ shade: false, line: true });
      for (const { address, style } of results) expect(withoutColour(style), address).toEqual({ shade: true, line: false });
      // Computed: by a formula of its own, or by one above that spills into it.
      for (const { address, content } of results) expect(content === "" || String(content).startsWith("="), address).toBe(true);
    },
  );

  it("the shade is darker than the paper by what a printer still shows", () => {
    // A tenth of grey is about the least that a laser printer's screen shows evenly (common practice); 255 is white.
    const channels = /^#(..)(..)(..)$/
      .exec(styles.result.fill ?? "")!
      .slice(1)
      .map((pair) => parseInt(pair, 16));
    expect(Math.min(...channels)).toBeLessThan(0.95 * 255);
  });
});
