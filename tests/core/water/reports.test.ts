import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convertedHardness, waterUnits } from "../../../src/core/water/hardness";
import { ionBalance, meqPerMg } from "../../../src/core/water/ion-balance";
import { ionNames, pureWater, saltNames, withSalts } from "../../../src/core/water/ions";
import { waterPlan } from "../../../src/core/water/target";

describe("the units of water reports", () => {
  it("lead back to themselves by any way round", () => {
    fc.assert(
      fc.property(fc.constantFrom(...waterUnits), fc.constantFrom(...waterUnits), fc.constantFrom(...waterUnits), (one, two, three) => {
        const round = convertedHardness(convertedHardness(convertedHardness(7, one, two), two, three), three, one);
        expect(round).toBeCloseTo(7, 10);
      }),
    );
  });
});

describe("the balance of ions", () => {
  it("is even for every salt in pure water, whatever it is", () => {
    for (const salt of saltNames) {
      const { differencePercent, verdict } = ionBalance(withSalts(pureWater, [{ salt, massG: 3 }], 10));
      expect(Math.abs(differencePercent), salt).toBeLessThan(0.01);
      expect(verdict).toBe("balanced");
    }
    expect(ionBalance(pureWater).verdict).toBe("balanced");
  });

  /** Calcium against bicarbonate, both in meq/L. */
  const verdictOf = (cations: number, anions: number) =>
    ionBalance({ ...pureWater, calcium: cations / meqPerMg("calcium"), bicarbonate: -anions / meqPerMg("bicarbonate") }).verdict;

  it.each([
    [2.19, 2, "balanced"],
    [2.21, 2, "ions missing"],
    [2.49, 2, "ions missing"],
    [2.51, 2, "cannot be right"],
    [5.19, 5, "balanced"],
    [5.3, 5, "ions missing"],
    [6.05, 5, "ions missing"],
    [6.2, 5, "cannot be right"],
    [22, 20, "balanced"],
    [22.3, 20, "ions missing"],
  ] as const)("of %s meq/L of cations and %s of anions is: %s", (cations, anions, verdict) => {
    expect(verdictOf(cations, anions)).toBe(verdict);
  });
});

describe("the nearest water", () => {
  const milligrams = fc.integer({ min: 0, max: 300 });
  const water = fc
    .tuple(...ionNames.map(() => milligrams))
    .map((values) => Object.fromEntries(ionNames.map((ion, at) => [ion, values[at]])) as never);

  it("cannot be bettered by a little more or less of any salt, or of the dilution", () => {
    fc.assert(
      fc.property(water, water, (base, target) => {
        const allowed = ["gypsum", "calcium chloride", "epsom salt", "table salt", "baking soda"] as const;
        const { dilution, additions, reached } = waterPlan(base, target, 1, allowed, true);
        const miss = (share: number, grams: readonly number[]) => {
          const left = { ...pureWater, ...Object.fromEntries(ionNames.map((ion) => [ion, base[ion] * (1 - share)])) };
          const water = withSalts(
            left,
            allowed.map((salt, at) => ({ salt, massG: grams[at] ?? 0 })),
            1,
          );
          return ionNames.reduce((sum, ion) => sum + (water[ion] - target[ion]) ** 2, 0);
        };
        const grams = additions.map(({ massG }) => massG);
        const best = ionNames.reduce((sum, ion) => sum + (reached[ion] - target[ion]) ** 2, 0);
        expect(best).toBeCloseTo(miss(dilution, grams), 6);
        for (const step of [-0.01, 0.01]) {
          if (dilution + step >= 0 && dilution + step <= 1) expect(miss(dilution + step, grams)).toBeGreaterThanOrEqual(best - 1e-6);
          grams.forEach((_, at) => {
            const other = grams.map((mass, index) => (index === at ? mass + step : mass));
            if (other.every((mass) => mass >= 0)) expect(miss(dilution, other)).toBeGreaterThanOrEqual(best - 1e-6);
          });
        }
      }),
    );
  });
});
