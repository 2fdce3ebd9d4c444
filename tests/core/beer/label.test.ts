import { describe, expect, it } from "vitest";
import { energyKj } from "../../../src/core/beer/energy";
import { labelOf } from "../../../src/core/beer/label";

describe("labelOf", () => {
  /** Four beers of food tables, in 100 g: alcohol g, carbohydrate g, kcal (USDA FoodData Central and Souci, Fachmann and Kraut; from memory). */
  it.each([
    ["ordinary", 1.0473, 1.0093, 43, 3.6],
    ["light", 1.0324, 1.0042, 29, 1.8],
  ])("is that of food tables: %s beer", (_, original, final, kcal, carbohydrate) => {
    const label = labelOf(original, final, 0);
    expect(Math.abs(label.kcal - kcal)).toBeLessThan(1.5);
    expect(Math.abs(label.carbohydrateG - carbohydrate)).toBeLessThan(0.5);
  });

  it("differs from the American way of calculating energy by less than 6 %", () => {
    for (const [original, final] of [
      [1.04, 1.008],
      [1.05, 1.012],
      [1.08, 1.02],
    ] as const)
      expect(labelOf(original, final, 0).kj / energyKj(original, final, 100)).toBeCloseTo(1, 1);
  });

  it("counts a kilocalorie as 4.14 to 4.25 kJ, as the two columns of the regulation do", () => {
    const { kj, kcal } = labelOf(1.05, 1.012, 1.5);
    expect(kj / kcal).toBeGreaterThan(4.14);
    expect(kj / kcal).toBeLessThan(4.25);
  });

  it("adds what priming brings: 0.26 % and 6 kJ for each volume", () => {
    const [without, primed] = [labelOf(1.05, 1.012, 0), labelOf(1.05, 1.012, 1)];
    expect(primed.abvPercent - without.abvPercent).toBeCloseTo(0.262, 3);
    expect(primed.kj - without.kj).toBeCloseTo(6, 1);
    expect(primed.carbohydrateG).toBe(without.carbohydrateG);
  });
});
