import { describe, expect, it } from "vitest";
import { pureWater, requireChalkDissolves, type Water } from "../../../src/core/water/ions";

/**
 * Calcite in water open to the air, by electroneutrality: 2 [Ca] + [H] = [HCO3] + 2 [CO3] + [OH] + what else is dissolved,
 * every species by mass action at 20 °C (constants as Stumm and Morgan, Aquatic Chemistry, table them: pKs 8.45, pK1 6.38,
 * pK2 10.38, pKH 1.41, pKw 14.17). mg/L of chalk that dissolve.
 */
function dissolvesMgPerL(alkalinityMolPerL: number): number {
  const carbonDioxide = 10 ** -1.41 * 420e-6;
  let [low, high] = [5, 11];
  const of = (pH: number) => {
    const h = 10 ** -pH;
    const bicarbonate = (10 ** -6.38 * carbonDioxide) / h;
    const carbonate = (10 ** -10.38 * bicarbonate) / h;
    const calcium = 10 ** -8.45 / carbonate;
    return { calcium, charge: 2 * calcium + h + alkalinityMolPerL - bicarbonate - 2 * carbonate - 10 ** -14.17 / h };
  };
  for (let step = 0; step < 80; step += 1) {
    const pH = (low + high) / 2;
    if (of(pH).charge > 0) low = pH;
    else high = pH;
  }
  return of(low).calcium * 100_087;
}

const soda = (mol: number): Water => ({ ...pureWater, sodium: mol * 22_990, bicarbonate: mol * 61_017 });
const refused = (water: Water, mgPerL: number): boolean => {
  try {
    requireChalkDissolves(water, [{ salt: "chalk", massG: mgPerL / 1000 }], 1);
    return false;
  } catch {
    return true;
  }
};

describe("chalk in water", () => {
  it("dissolves in pure water as textbooks say: about half a millimole, 50 mg a litre (Stumm and Morgan, calcite open to the air)", () => {
    expect(dissolvesMgPerL(0)).toBeGreaterThan(45);
    expect(dissolvesMgPerL(0)).toBeLessThan(56);
  });

  it.each([0, 0.0003, 0.001])(
    "with %s mol/L of baking soda is counted up to what a balance of charges lets dissolve, to 4 in a hundred",
    (mol) => {
      const most = dissolvesMgPerL(mol);
      expect(refused(soda(mol), 0.96 * most)).toBe(false);
      expect(refused(soda(mol), 1.04 * most)).toBe(true);
    },
  );

  it("does not dissolve in hard water, and says how much would in softer", () => {
    const hard: Water = { ...pureWater, calcium: 80, bicarbonate: 244 };
    expect(() => requireChalkDissolves(hard, [{ salt: "chalk", massG: 5 }], 20)).toThrow(/^salts: no chalk dissolves in this water/);
    expect(() => requireChalkDissolves(pureWater, [{ salt: "chalk", massG: 5 }], 20)).toThrow(/^salts: only 1\.0\d g of chalk dissolve/);
  });

  it("leaves what holds no chalk alone, and adds the rows of chalk up", () => {
    requireChalkDissolves({ ...pureWater, calcium: 200, bicarbonate: 400 }, [{ salt: "gypsum", massG: 50 }], 20);
    requireChalkDissolves(
      pureWater,
      [
        { salt: "chalk", massG: 0.5 },
        { salt: "chalk", massG: 0.5 },
      ],
      20,
    );
    expect(() =>
      requireChalkDissolves(
        pureWater,
        [
          { salt: "chalk", massG: 0.7 },
          { salt: "chalk", massG: 0.7 },
        ],
        20,
      ),
    ).toThrow("only 1.0");
  });
});
