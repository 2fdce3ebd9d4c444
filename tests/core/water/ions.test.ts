import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { blendedWater } from "../../../src/core/water/blend";
import { ionNames, pureWater, saltNames, waterOf, withSalts, type Ion, type SaltName, type Water } from "../../../src/core/water/ions";

/** Atomic weights of the IUPAC table, and the salts as their formulas say: a second way to the molar masses. */
const atoms = { H: 1.008, C: 12.011, O: 15.999, Na: 22.98977, Mg: 24.305, S: 32.06, Cl: 35.45, Ca: 40.078 } as const;
const formulas: Record<SaltName, Partial<Record<keyof typeof atoms, number>>> = {
  gypsum: { Ca: 1, S: 1, O: 6, H: 4 },
  "calcium chloride": { Ca: 1, Cl: 2, H: 4, O: 2 },
  "calcium chloride anhydrous": { Ca: 1, Cl: 2 },
  "epsom salt": { Mg: 1, S: 1, O: 11, H: 14 },
  "magnesium chloride": { Mg: 1, Cl: 2, H: 12, O: 6 },
  "table salt": { Na: 1, Cl: 1 },
  "baking soda": { Na: 1, H: 1, C: 1, O: 3 },
  chalk: { Ca: 1, C: 1, O: 3 },
  "slaked lime": { Ca: 1, O: 2, H: 2 },
};
const charges: Water = { calcium: 2, magnesium: 2, sodium: 1, chloride: -1, sulfate: -2, bicarbonate: -1 };
const molar: Water = { calcium: 40.078, magnesium: 24.305, sodium: 22.99, chloride: 35.45, sulfate: 96.06, bicarbonate: 61.017 };

const oneGramPerLitre = (salt: SaltName): Water => withSalts(pureWater, [{ salt, massG: 1 }], 1);
const amount = fc.double({ min: 0, max: 500, noNaN: true });
const water: fc.Arbitrary<Water> = fc.record({
  calcium: amount,
  magnesium: amount,
  sodium: amount,
  chloride: amount,
  sulfate: amount,
  bicarbonate: amount,
});
const additions = fc.array(fc.record({ salt: fc.constantFrom(...saltNames), massG: fc.double({ min: 0.01, max: 20, noNaN: true }) }), {
  maxLength: 6,
});

describe("withSalts", () => {
  it.each(saltNames)("gives what the formula of %s says", (salt) => {
    const mass = Object.entries(formulas[salt]).reduce((sum, [atom, count]) => sum + atoms[atom as keyof typeof atoms] * count, 0);
    const ions = oneGramPerLitre(salt);
    const metal = formulas[salt].Ca ? "calcium" : formulas[salt].Mg ? "magnesium" : "sodium";
    expect(Math.abs(ions[metal] / ((1000 * molar[metal]) / mass) - 1)).toBeLessThan(3e-4);
  });

  it.each(saltNames)("keeps %s without a charge", (salt) => {
    const ions = oneGramPerLitre(salt);
    const charge = ionNames.reduce((sum, ion) => sum + (charges[ion] * ions[ion]) / molar[ion], 0);
    expect(Math.abs(charge)).toBeLessThan(0.005);
  });

  it("does not care about the order of the salts, and scales with the batch", () => {
    fc.assert(
      fc.property(water, additions, fc.double({ min: 1, max: 100, noNaN: true }), (base, salts, volumeL) => {
        const once = withSalts(base, salts, volumeL);
        const reversed = withSalts(base, [...salts].reverse(), volumeL);
        const tenfold = withSalts(
          base,
          salts.map(({ salt, massG }) => ({ salt, massG: 10 * massG })),
          10 * volumeL,
        );
        for (const ion of ionNames) {
          expect(reversed[ion]).toBeCloseTo(once[ion], 8);
          expect(tenfold[ion]).toBeCloseTo(once[ion], 8);
          expect(once[ion]).toBeGreaterThanOrEqual(base[ion]);
        }
      }),
    );
  });

  it("takes bicarbonate for the whole alkalinity of chalk: 1 g/L is 1000 mg/L as CaCO3", () => {
    expect(oneGramPerLitre("chalk").bicarbonate * (50.043 / 61.0168)).toBeCloseTo(1000, 0);
  });
});

describe("blendedWater", () => {
  it("lies between its waters, and does not care about order or unit of the shares", () => {
    const share = fc.double({ min: 0.1, max: 100, noNaN: true });
    fc.assert(
      fc.property(water, water, share, share, (one, other, a, b) => {
        const blend = blendedWater([
          { share: a, water: one },
          { share: b, water: other },
        ]);
        const turned = blendedWater([
          { share: b * 3.785, water: other },
          { share: a * 3.785, water: one },
        ]);
        for (const ion of ionNames) {
          expect(blend[ion]).toBeGreaterThanOrEqual(Math.min(one[ion], other[ion]) - 1e-9);
          expect(blend[ion]).toBeLessThanOrEqual(Math.max(one[ion], other[ion]) + 1e-9);
          expect(turned[ion]).toBeCloseTo(blend[ion], 8);
        }
      }),
    );
  });

  it("leaves a water alone when nothing is poured to it, and refuses no water at all", () => {
    const tap = waterOf((ion: Ion) => ionNames.indexOf(ion) * 10);
    expect(
      blendedWater([
        { share: 5, water: tap },
        { share: 0, water: pureWater },
      ]),
    ).toEqual(tap);
    expect(() => blendedWater([{ share: 0, water: tap }])).toThrow(BrewingError);
  });
});
