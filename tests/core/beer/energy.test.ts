import { describe, expect, it } from "vitest";
import { carbohydrateG, energyKj } from "../../../src/core/beer/energy";

describe("energy and carbohydrate", () => {
  it("grow with the serving", () => {
    expect(energyKj(1.05, 1.01, 660)).toBeCloseTo(2 * energyKj(1.05, 1.01, 330), 9);
    expect(carbohydrateG(1.05, 1.01, 660)).toBeCloseTo(2 * carbohydrateG(1.05, 1.01, 330), 9);
  });
  it("stay near the food label's factors: 29 kJ/g alcohol and 17 kJ/g carbohydrate and protein (Regulation (EU) 1169/2011, annex XIV)", () => {
    for (const [og, fg] of [[1.04, 1.01], [1.05, 1.01], [1.08, 1.018]] as const) {
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
});
