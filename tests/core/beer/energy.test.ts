import { describe, expect, it } from "vitest";
import { alcoholByMass } from "../../../src/core/beer/alcohol";
import { carbohydrateG, energyKj } from "../../../src/core/beer/energy";
import { realExtractPlato } from "../../../src/core/beer/real-extract";

describe("energy and carbohydrate", () => {
  it("grow with the serving", () => {
    expect(energyKj(1.05, 1.01, 660)).toBeCloseTo(2 * energyKj(1.05, 1.01, 330), 9);
    expect(carbohydrateG(1.05, 1.01, 660)).toBeCloseTo(2 * carbohydrateG(1.05, 1.01, 330), 9);
  });
  it("come to 194.9 kJ and 4.08 g in 100 mL of a beer from 1.050 to 1.010", () => {
    // Worked by hand: 12.3866 and 2.5636 °P, alcohol 4.1600 % by mass, real extract 4.4540 °P.
    // (6.9 × 4.1600 + 4 × (4.4540 − 0.1)) × 1.010 × 4.184 = 46.120 × 4.2258; (4.4540 × 0.93 − 0.1) × 1.010.
    expect(energyKj(1.05, 1.01, 100)).toBeCloseTo(194.895, 2);
    expect(carbohydrateG(1.05, 1.01, 100)).toBeCloseTo(4.0826, 3);
  });
  it("stay near the food label's factors: 29 kJ/g alcohol and 17 kJ/g carbohydrate and protein (Regulation (EU) 1169/2011, annex XIV)", () => {
    for (const [og, fg] of [
      [1.04, 1.01],
      [1.05, 1.01],
      [1.08, 1.018],
    ] as const) {
      const per100Ml = energyKj(og, fg, 100);
      // alcohol at 0.789 g/mL from the volume share, extract from the carbohydrate and 7 % protein
      const abv = 131.25 * (og - fg);
      const label = abv * 0.789 * 29 + (carbohydrateG(og, fg, 100) / 0.93) * 17;
      expect(Math.abs(per100Ml / label - 1), `${og} ${fg}`).toBeLessThan(0.06);
    }
  });
  it("never turn negative in beer drier than water", () => {
    expect(carbohydrateG(1.03, 0.99, 330)).toBeGreaterThanOrEqual(0);
    expect(energyKj(1.03, 0.99, 330)).toBeGreaterThan(0);
  });
  it("leave nothing but the alcohol where no extract is left: 6.9 kcal for each of its grams", () => {
    expect(realExtractPlato(1.01, 0.985)).toBeLessThan(0);
    expect(carbohydrateG(1.01, 0.985, 100)).toBe(0);
    expect(energyKj(1.01, 0.985, 100)).toBeCloseTo(6.9 * alcoholByMass(1.01, 0.985) * 0.985 * 4.184, 9);
  });
});
