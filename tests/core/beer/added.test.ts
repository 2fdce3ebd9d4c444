import { describe, expect, it } from "vitest";
import { gravityWithAdditions } from "../../../src/core/beer/added";
import { alcoholByVolume } from "../../../src/core/beer/alcohol";
import { realExtractPlato } from "../../../src/core/beer/real-extract";
import { bisect } from "../../../src/core/wort/bisect";
import { massToEnrichKg } from "../../../src/core/wort/enrich";

describe("gravityWithAdditions", () => {
  it("changes nothing where nothing comes in, nor by more of the same wort", () => {
    expect(gravityWithAdditions(1.05, 20, [])).toBeCloseTo(1.05, 10);
    // 12.386 °P.
    expect(gravityWithAdditions(1.05, 20, [{ massKg: 5, sugarPercent: 12.386 }])).toBeCloseTo(1.05, 5);
  });

  it("is what WORT.ENRICH weighs, the other way round", () => {
    const kg = massToEnrichKg(20, 1.045, 1.06, 100);
    expect(gravityWithAdditions(1.045, 20, [{ massKg: kg, sugarPercent: 100 }])).toBeCloseTo(1.06, 9);
  });

  /**
   * By Gay-Lussac a kilogram of sucrose gives 4 × 46.07 / 342.3 = 0.5383 kg of alcohol at most, of which yeast makes 90 to 96 %
   * (its own growth; from memory): another balance than Balling's.
   */
  it.each([0.3, 0.6, 1])("%f kg of sugar in 20 L bring the alcohol that they can make", (kg) => {
    const before = alcoholByVolume(1.05, 1.01);
    const litres = 20 + 0.62 * kg;
    const alcoholL = (before / 100) * 20 + (0.5383 * 0.94 * kg) / 0.78924;
    const whole = gravityWithAdditions(1.05, 20, [{ massKg: kg, sugarPercent: 100 }]);
    // Sugar ferments whole: the gravity ends where as much real extract is left in the beer as before.
    const left = (original: number, final: number, volume: number): number => realExtractPlato(original, final) * final * volume;
    const final = bisect((gravity) => left(whole, gravity, litres) - left(1.05, 1.01, 20), 0.99, 1.02);
    expect(final).toBeLessThan(1.01);
    expect(Math.abs(alcoholByVolume(whole, final) - (100 * alcoholL) / litres)).toBeLessThan(0.04 + 0.1 * kg);
  });

  it("ends where the sugar tables do", () => {
    expect(() => gravityWithAdditions(1.1, 10, [{ massKg: 10, sugarPercent: 100 }])).toThrow(/additions bring the wort to/);
  });
});
