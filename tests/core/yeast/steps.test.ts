import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellsAtOneLitre, growthExponent } from "../../../src/core/yeast/starter";
import { starterSteps } from "../../../src/core/yeast/steps";

describe("starterSteps", () => {
  /** The table of growth followed forwards, as a brewer would: so many cells into so many litres. */
  const grown = (cells: number, litres: number): number => (cellsAtOneLitre / 100) * ((100 * litres) / cells) ** growthExponent * cells;

  it("end at the cells wanted when they are grown one after the other", () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 500, noNaN: true }), fc.double({ min: 1.6, max: 12, noNaN: true }), (now, times) => {
        const [first, second] = starterSteps(now, now * times, 1.05, "still");
        const between = grown(now, first.volumeL);
        expect(between).toBeGreaterThanOrEqual(first.cells * (1 - 1e-9));
        expect(grown(first.cells, second.volumeL)).toBeGreaterThanOrEqual(now * times * (1 - 1e-9));
        expect(second.cells).toBeCloseTo(now * times, 6);
      }),
    );
  });

  it("take less growth in a step than any other pair: both multiply by the same", () => {
    const [first, second] = starterSteps(40, 360, 1.036, "still");
    expect(first.cells / 40).toBeCloseTo(3, 9);
    expect(second.cells / first.cells).toBeCloseTo(3, 9);
  });

  it("reach what one step does not, and say where two do not", () => {
    expect(starterSteps(100, 1300, 1.036, "still")[1].volumeL).toBeGreaterThan(10);
    expect(() => starterSteps(100, 1400, 1.036, "still")).toThrow(/covers up to 3.7 times/);
    expect(starterSteps(200, 100, 1.036, "still")).toEqual([
      { volumeL: 0, cells: 200 },
      { volumeL: 0, cells: 200 },
    ]);
  });
});
