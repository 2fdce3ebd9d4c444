import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { baseNames, correctors, mashCorrection, phOfMash, type Mash } from "../../../src/core/mash/acidity";
import { mashedMalt, type MashedMalt } from "../../../src/core/mash/malts";

const pale: MashedMalt = { massKg: 5, pH: 5.7, bufferMeqPerKg: 45 };
const mash = (changes: Partial<Mash> = {}): Mash => ({
  malts: [pale],
  waterL: 20,
  alkalinityMgPerL: 0,
  calciumMgPerL: 0,
  magnesiumMgPerL: 0,
  ...changes,
});

describe("the pH of a mash", () => {
  it("is the malt's own in distilled water, and between those of two malts, nearer to what buffers more", () => {
    expect(phOfMash(mash(), "lactic", 0)).toBeCloseTo(5.7, 3);
    const dark: MashedMalt = { massKg: 1, pH: 4.7, bufferMeqPerKg: 40 };
    // (225 × 5.7 + 40 × 4.7) / 265
    expect(phOfMash(mash({ malts: [pale, dark] }), "lactic", 0)).toBeCloseTo(5.549, 2);
  });

  it("rises by about 0.3 for 10 °dH of residual alkalinity, as a magazine's answer quotes after Kolbach", () => {
    const hard = mash({ alkalinityMgPerL: 178.48 });
    expect(phOfMash(hard, "lactic", 0) - phOfMash(mash(), "lactic", 0)).toBeGreaterThan(0.2);
    expect(phOfMash(hard, "lactic", 0) - phOfMash(mash(), "lactic", 0)).toBeLessThan(0.4);
  });

  it("falls by 0.05 to 0.12 with a hundredth of acidulated malt (common practice: about 0.1)", () => {
    const malts = [{ ...pale, massKg: 4.95 }, mashedMalt(0.05, "acidulated", 0)];
    const fall = phOfMash(mash(), "lactic", 0) - phOfMash(mash({ malts }), "lactic", 0);
    expect(fall).toBeGreaterThan(0.05);
    expect(fall).toBeLessThan(0.12);
  });

  it("takes lactic acid at 1 mL of 88 % for each kg about 0.25 down, whatever the size of the batch", () => {
    // 11.8 meq/kg × 0.98 over 45 meq/kg, by hand
    expect(phOfMash(mash(), "lactic", 0) - phOfMash(mash(), "lactic", 5)).toBeCloseTo(0.257, 2);
  });

  it("counts the calcium of lime as that of the water: less than its two hydroxides", () => {
    const [lime, soda] = [0.0740927, 0.0840066].map((gramsPerMeq, index) => {
      const name = baseNames[1 - index] ?? "slaked lime";
      return phOfMash(mash(), name, 20 * gramsPerMeq) - 5.7;
    });
    // 20 mmol: 20 × (2 − 2 / 3.5) over 225, and 20 × 0.83 over 225 with what is left of it as bicarbonate
    expect(lime).toBeCloseTo(28.57 / 225, 2);
    expect(soda).toBeGreaterThan(16 / 225 - 0.01);
    expect(soda).toBeLessThan(18 / 225);
  });

  it("is refused without mashed malt, and where it would leave what the malts' figures cover", () => {
    expect(() => phOfMash(mash({ malts: [] }), "lactic", 0)).toThrow(/malts hold nothing that is mashed/);
    expect(() => phOfMash(mash(), "lactic", 500)).toThrow(/below 4.3/);
    expect(() => phOfMash(mash(), "slaked lime", 500)).toThrow(/above 6.8/);
  });
});

describe("mashCorrection", () => {
  const target = fc.double({ min: 4.9, max: 6, noNaN: true });
  const milligrams = fc.double({ min: 0, max: 300, noNaN: true });

  it("brings the mash to the target, with every acid and base, or says that it takes the opposite", () => {
    let [met, opposite] = [0, 0];
    fc.assert(
      fc.property(fc.constantFrom(...correctors), target, milligrams, milligrams, (name, wanted, alkalinityMgPerL, calciumMgPerL) => {
        const hard = mash({ alkalinityMgPerL, calciumMgPerL });
        const before = phOfMash(hard, name, 0);
        const helps = wanted < before === ["lactic", "phosphoric"].includes(name);
        if (!helps) {
          opposite += 1;
          expect(() => mashCorrection(hard, wanted, name)).toThrow(/it needs none/);
          return;
        }
        met += 1;
        expect(phOfMash(hard, name, mashCorrection(hard, wanted, name))).toBeCloseTo(wanted, 9);
      }),
    );
    expect(met).toBeGreaterThan(5);
    expect(opposite).toBeGreaterThan(5);
  });
});

describe("a malt of no known kind", () => {
  it.each([
    [0, "base"],
    [19.9, "base"],
    [20, "crystal"],
    [149, "crystal"],
    [150, "roasted"],
    [550, "roasted"],
  ] as const)("goes by its colour: %s °L is %s", (lovibond, kind) => {
    expect(mashedMalt(1, undefined, lovibond)).toEqual(mashedMalt(1, kind, lovibond));
  });

  it("has its own pH where that was measured", () => {
    expect(mashedMalt(2, 5.63, 3)).toEqual({ massKg: 2, pH: 5.63, bufferMeqPerKg: 45 });
    expect(mashedMalt(2, "base", 0).pH).toBeCloseTo(5.74, 9);
    expect(mashedMalt(2, "base", 100).pH).toBe(5.4);
  });
});
