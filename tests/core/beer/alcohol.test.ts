import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  alcoholByMass,
  alcoholByMassFromVolume,
  alcoholByVolume,
  alcoholByVolumeFromMass,
  alcoholByVolumeSimple,
} from "../../../src/core/beer/alcohol";
import { originalGravityFromAlcohol } from "../../../src/core/beer/original-gravity";
import { realExtractPlato } from "../../../src/core/beer/real-extract";
import { platoFromGravity } from "../../../src/core/wort/plato";

const original = fc.double({ min: 1.02, max: 1.15, noNaN: true });
const fall = fc.double({ min: 0, max: 1, noNaN: true });
/** A final gravity from dry (0.99) up to the original. */
const beer = fc.tuple(original, fall).map(([og, part]) => [og, 0.99 + part * (og - 0.99)] as const);

describe("alcohol", () => {
  it("is none without fermentation, and more the lower the beer ends", () => {
    expect(alcoholByVolume(1.05, 1.05)).toBe(0);
    fc.assert(fc.property(beer, ([og, fg]) => alcoholByVolume(og, fg - 0.001) > alcoholByVolume(og, fg)));
  });
  it("by mass and by volume turn into each other", () => {
    fc.assert(
      fc.property(beer, ([og, fg]) => Math.abs(alcoholByMassFromVolume(alcoholByVolume(og, fg), fg) - alcoholByMass(og, fg)) < 1e-9),
    );
  });
  // USP 29 alcoholometric table (NBS Bulletin 9), 15.56 °C: % mass to % volume, with the gravities of the same mixtures at
  // 20 °C from the OIML R 22 polynomial; the relation by density carries over to beer
  it.each([
    [2, 0.99628, 2.51],
    [4, 0.99281, 5],
    [6, 0.98956, 7.48],
    [8, 0.98651, 9.94],
  ])("of %d %% by mass in water of that strength is the table's %% by volume", (mass, gravity, expected) => {
    expect(Math.abs(alcoholByVolumeFromMass(mass, gravity) - expected)).toBeLessThan(0.06);
  });
  it("the simple rules stay within 0.5 % of the extract method for everyday beer", () => {
    for (const og of [1.03, 1.04, 1.05, 1.06])
      expect(Math.abs(alcoholByVolumeSimple(og, 1.01, 131.25) - alcoholByVolume(og, 1.01))).toBeLessThan(0.5);
  });
  it("refuses a gravity that rose", () => {
    expect(() => alcoholByVolume(1.01, 1.05)).toThrow("gravity falls during fermentation");
    expect(() => realExtractPlato(1.01, 1.05)).toThrow("gravity falls during fermentation");
    for (const factor of [131, 131.25] as const)
      expect(() => alcoholByVolumeSimple(1.01, 1.05, factor)).toThrow("gravity falls during fermentation");
    expect(() => alcoholByVolume(1.05, 1.05005)).toThrow("gravity falls during fermentation");
    // A rounding apart is no rise.
    expect(alcoholByVolume(1.05, 1.05 + 1e-12)).toBeCloseTo(0, 9);
  });
});

describe("original gravity from alcohol", () => {
  it("undoes alcohol by volume", () => {
    fc.assert(fc.property(beer, ([og, fg]) => Math.abs(originalGravityFromAlcohol(alcoholByVolume(og, fg), fg) - og) < 1e-9));
  });
  it("has no answer beyond a wort of 1.200", () => {
    expect(() => originalGravityFromAlcohol(29, 1.02)).toThrow("above 1.200");
    expect(originalGravityFromAlcohol(alcoholByVolume(1.199, 1.02), 1.02)).toBeCloseTo(1.199, 9);
    expect(() => originalGravityFromAlcohol(alcoholByVolume(1.203, 1.02), 1.02)).toThrow("above 1.200");
  });
});

describe("real extract", () => {
  it("lies between the apparent and the original extract", () => {
    fc.assert(
      fc.property(beer, ([og, fg]) => {
        const real = realExtractPlato(og, fg);
        return real >= platoFromGravity(fg) && real <= platoFromGravity(og);
      }),
    );
  });
  it("is 4.454 °P in a beer from 1.050 to 1.010", () => {
    // Worked by hand: 2.5636 °P apparent, 4.1600 % alcohol by mass; (2.5636 + 0.4654 × 4.1600 − 0.003615 × 4.1600²) / 0.9962.
    expect(realExtractPlato(1.05, 1.01)).toBeCloseTo(4.454, 3);
  });
  it("is the original extract in wort that has not fermented", () => expect(realExtractPlato(1.05, 1.05)).toBe(platoFromGravity(1.05)));
});
