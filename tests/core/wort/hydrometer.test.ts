import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { gravityFromHydrometer } from "../../../src/core/wort/hydrometer";
import { gravityFromPlato } from "../../../src/core/wort/plato";

const sg = fc.double({ min: 0.98, max: 1.15, noNaN: true });
const celsius = fc.double({ min: 0, max: 70, noNaN: true });

describe("hydrometer", () => {
  it("needs no correction at 20 °C with a 20 °C spindle, on either scale", () => {
    fc.assert(fc.property(sg, (reading) => Math.abs(gravityFromHydrometer(reading, "SG", 20, 20) - reading) < 1e-9));
    for (const plato of [-3, 0, 5, 12, 25, 40]) expect(gravityFromHydrometer(plato, "P", 20, 20)).toBeCloseTo(gravityFromPlato(plato), 10);
  });
  it("adds in warm samples and takes away in cold ones", () => {
    fc.assert(
      fc.property(
        sg,
        celsius,
        (reading, t) =>
          t === 20 || Math.sign(gravityFromHydrometer(reading, "SG", t, 20) - reading) === Math.sign(t - 20) || Math.abs(t - 20) < 1e-6,
      ),
    );
  });
  it("rises with the reading and, above 10 °C, with the temperature (water is densest at 4 °C)", () => {
    fc.assert(
      fc.property(sg, fc.double({ min: 10, max: 69, noNaN: true }), (reading, t) => {
        const here = gravityFromHydrometer(reading, "SG", t, 20);
        return gravityFromHydrometer(reading + 0.001, "SG", t, 20) > here && gravityFromHydrometer(reading, "SG", t + 1, 20) > here;
      }),
    );
  });
  it("gives the same wort from both scales within the weighing-in-air difference, 0.0001", () => {
    for (const t of [5, 20, 40, 60]) {
      for (const plato of [5, 12, 20]) {
        const bySg = gravityFromHydrometer(gravityFromPlato(plato), "SG", t, 20);
        expect(Math.abs(bySg - gravityFromHydrometer(plato, "P", t, 20))).toBeLessThan(1e-4);
      }
    }
  });
  it("turns a 60 °F spindle into the 20 °C scale: a trifle lower", () => {
    const shift = 1.05 - gravityFromHydrometer(1.05, "SG", 15.556, 15.556);
    expect(shift).toBeGreaterThan(0.0001);
    expect(shift).toBeLessThan(0.0004);
  });
  it("refuses readings off the scale and says what they look like", () => {
    expect(() => gravityFromHydrometer(12.4, "SG", 20, 20)).toThrow(BrewingError);
    expect(() => gravityFromHydrometer(12.4, "SG", 20, 20)).toThrow('looks like °P: set scale to "P"');
    expect(() => gravityFromHydrometer(-3, "SG", 20, 20)).toThrow("from 0.980 to 1.200");
    expect(() => gravityFromHydrometer(41, "P", 20, 20)).toThrow("from -5 to 40 °P");
    for (const off of [-5.01, 40.1]) expect(() => gravityFromHydrometer(off, "P", 20, 20)).toThrow("from -5 to 40 °P");
    for (const off of [0.979, 1.201]) expect(() => gravityFromHydrometer(off, "SG", 20, 20)).toThrow("from 0.980 to 1.200");
    expect(() => gravityFromHydrometer(1.201, "SG", 20, 20)).toThrow("looks like °P");
    expect(() => gravityFromHydrometer(0.979, "SG", 20, 20)).not.toThrow("looks like °P");
    expect([0.98, 1.2].map((reading) => gravityFromHydrometer(reading, "SG", 20, 20))).toEqual([
      expect.closeTo(0.98, 9),
      expect.closeTo(1.2, 9),
    ]);
  });
});
