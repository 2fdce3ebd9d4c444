import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { equilibriumGaugeBar, gramsPerLitreAndBar, kegGaugeBar, volumesAtGaugePressure } from "../../../src/core/pack/solubility";

const volumes = fc.double({ min: 1.8, max: 6, noNaN: true });
const temperatureC = fc.double({ min: 0, max: 60, noNaN: true });
/** Sea level, bar. */
const air = 1.01325;

describe("carbonation and pressure", () => {
  it("are inverses of each other", () => {
    fc.assert(
      fc.property(volumes, temperatureC, (co2, celsius) => {
        expect(volumesAtGaugePressure(kegGaugeBar(co2, celsius, air), celsius, air)).toBeCloseTo(co2, 10);
      }),
    );
  });

  it("take more pressure for more gas and for warmer beer", () => {
    fc.assert(
      fc.property(volumes, fc.double({ min: 0, max: 59, noNaN: true }), (co2, celsius) => {
        expect(kegGaugeBar(co2 + 0.1, celsius, air)).toBeGreaterThan(kegGaugeBar(co2, celsius, air));
        expect(kegGaugeBar(co2, celsius + 1, air)).toBeGreaterThan(kegGaugeBar(co2, celsius, air));
      }),
    );
  });

  it("refuse a carbonation below that of an open vessel", () => {
    const open = volumesAtGaugePressure(0, 20, air);
    expect(kegGaugeBar(open + 1e-9, 20, air)).toBeCloseTo(0, 8);
    expect(() => kegGaugeBar(open - 0.01, 20, air)).toThrow(BrewingError);
    expect(equilibriumGaugeBar(open - 0.01, 20, air)).toBeLessThan(0);
  });

  // The equation used was read in the abstract of 1991; these are others for water, at a partial
  // pressure of 1 atm: R. F. Weiss, Marine Chemistry 2, 203, 1974 (to 40 °C, mol per litre and atm of fugacity), and
  // IAPWS G7-04, which ./closed-vessel-physics holds. Beer takes up less than water, at every temperature.
  it.each([0.5, 4, 10, 15, 20, 25, 30, 35, 40])("take beer to hold 2 to 7 %% less than water by Weiss at %f °C", (celsius) => {
    const kelvin = celsius + 273.15;
    const inWater = (Math.exp(-58.0931 + (90.5069 * 100) / kelvin + 22.294 * Math.log(kelvin / 100)) / 1.01325) * 44.0095;
    expect(gramsPerLitreAndBar(celsius) / inWater).toBeGreaterThan(0.92);
    expect(gramsPerLitreAndBar(celsius) / inWater).toBeLessThan(0.98);
  });

  // A keg table that fits the ASBC's chart (its rows stand in tests/reference/pack/carbonation.csv): never below it.
  it.each([
    [2.5, 32, 8.2],
    [2.5, 36, 10.2],
    [2, 38, 6],
    [2.5, 38, 11.2],
    [3, 38, 16.5],
    [2.5, 40, 12.3],
    [2.5, 44, 14.4],
    [2.5, 50, 17.6],
    [2, 60, 15.9],
    [3, 60, 30.2],
    [2.5, 70, 28.8],
  ])("are not below the ASBC's chart for %f volumes at %f °F, %f psi", (co2, fahrenheit, psi) => {
    const ours = kegGaugeBar(co2, (fahrenheit - 32) / 1.8, air) / 0.0689476;
    expect(ours).toBeGreaterThan(psi);
    expect(ours - psi).toBeLessThan(fahrenheit <= 50 ? 0.8 : 2.9);
  });
});
