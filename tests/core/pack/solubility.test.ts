import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { equilibriumGaugeBar, gramsPerLitreAndBar, kegGaugeBar, volumesAtGaugePressure } from "../../../src/core/pack/solubility";

const volumes = fc.double({ min: 1.8, max: 6, noNaN: true });
const temperatureC = fc.double({ min: 0, max: 45, noNaN: true });

describe("carbonation and pressure", () => {
  it("are inverses of each other", () => {
    fc.assert(
      fc.property(volumes, temperatureC, (co2, celsius) => {
        expect(volumesAtGaugePressure(kegGaugeBar(co2, celsius), celsius)).toBeCloseTo(co2, 10);
      }),
    );
  });

  it("take more pressure for more gas and for warmer beer", () => {
    fc.assert(
      fc.property(volumes, fc.double({ min: 0, max: 44, noNaN: true }), (co2, celsius) => {
        expect(kegGaugeBar(co2 + 0.1, celsius)).toBeGreaterThan(kegGaugeBar(co2, celsius));
        expect(kegGaugeBar(co2, celsius + 1)).toBeGreaterThan(kegGaugeBar(co2, celsius));
      }),
    );
  });

  it("refuse a carbonation below that of an open vessel", () => {
    const open = volumesAtGaugePressure(0, 20);
    expect(kegGaugeBar(open + 1e-9, 20)).toBeCloseTo(0, 8);
    expect(() => kegGaugeBar(open - 0.01, 20)).toThrow(BrewingError);
    expect(equilibriumGaugeBar(open - 0.01, 20)).toBeLessThan(0);
  });

  // Carroll et al. 1991 and others as listed by R. Sander, Atmos. Chem. Phys. 23, 2023: carbon dioxide in water,
  // 3.4e-4 mol/(m3 Pa) at 25 °C, d ln H / d(1/T) = 2300 to 2400 K. Beer takes up somewhat less than water.
  it.each([5, 15, 25, 35, 45])("stay near the solubility in water at %i °C, and below it when warm", (celsius) => {
    const inWater = (kelvin: number): number => 34 * 0.0440095 * Math.exp(kelvin * (1 / (celsius + 273.15) - 1 / 298.15));
    const inBeer = gramsPerLitreAndBar(celsius);
    for (const kelvin of [2300, 2400]) {
      expect(inBeer / inWater(kelvin)).toBeGreaterThan(0.87);
      expect(inBeer / inWater(kelvin)).toBeLessThan(celsius >= 15 ? 1 : 1.02);
    }
  });
});
