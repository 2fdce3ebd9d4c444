import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { acidMl, acidMolPerL, acidNames, acidDensity, acids, equivalentsPerMole } from "../../../src/core/water/acid";

const acid = fc.constantFrom(...acidNames);
const milligrams = fc.double({ min: 0, max: 500, noNaN: true });

describe("equivalentsPerMole", () => {
  it("is a half where the pH is the pKa of a single step", () => {
    expect(equivalentsPerMole("lactic", 3.86)).toBeCloseTo(0.5, 12);
    expect(equivalentsPerMole("phosphoric", 2.148)).toBeCloseTo(0.5, 4);
  });

  it("is one and a half, two and a half at the later steps of phosphoric acid, and 3 in lye", () => {
    expect(equivalentsPerMole("phosphoric", 7.198)).toBeCloseTo(1.5, 4);
    expect(equivalentsPerMole("phosphoric", 12.35)).toBeCloseTo(2.5, 4);
    expect(equivalentsPerMole("phosphoric", 16)).toBeCloseTo(3, 3);
  });

  it("is 0.972 and 1.015 in a mash", () => {
    expect(equivalentsPerMole("lactic", 5.4)).toBeCloseTo(0.972, 3);
    expect(equivalentsPerMole("phosphoric", 5.4)).toBeCloseTo(1.015, 3);
  });

  it("climbs with pH", () => {
    const pH = fc.double({ min: 1, max: 14, noNaN: true });
    fc.assert(
      fc.property(
        acid,
        pH,
        pH,
        (name, a, b) => equivalentsPerMole(name, Math.max(a, b)) >= equivalentsPerMole(name, Math.min(a, b)) - 1e-12,
      ),
    );
  });
});

describe("the density of phosphoric acid", () => {
  /** Handbook values at 20 °C: a table of inorganic acids (10 to 40 %), the ECHA dossier's ten handbooks (50 to 85 %). */
  it.each([
    [10, 1.0531],
    [20, 1.1135],
    [30, 1.1804],
    [40, 1.2536],
    [50, 1.335],
    [75, 1.575],
    [85, 1.69],
  ])("at %s %% is %s g/mL within 0.7 %%", (percent, density) => {
    expect(Math.abs(acidDensity("phosphoric", percent / 100) / density - 1)).toBeLessThan(0.007);
  });
});

describe("the densities", () => {
  it("go through the points that they were drawn through: lactic 1.209 at 88 %, phosphoric 1.053 at 10 % and 1.685 at 85 %", () => {
    expect(acidDensity("lactic", 0.88)).toBeCloseTo(1.209, 3);
    expect(acidDensity("phosphoric", 0.1)).toBeCloseTo(1.053, 3);
    expect(acidDensity("phosphoric", 0.85)).toBeCloseTo(1.685, 3);
  });
});

describe("acidMolPerL", () => {
  it("is 11.8 for lactic acid of 88 %, 1.07 and 14.6 for phosphoric of 10 and 85 %", () => {
    expect(acidMolPerL("lactic", 88)).toBeCloseTo(11.81, 1);
    expect(acidMolPerL("phosphoric", 10)).toBeCloseTo(1.075, 2);
    expect(acidMolPerL("phosphoric", 85)).toBeCloseTo(14.62, 1);
    // A laboratory's table of concentrated acids: 85 % of 1.685 g/mL is 14.615 mol/L; a solved exercise: half a mole is 34 mL.
    expect(acidMolPerL("phosphoric", 85)).toBeCloseTo(14.615, 1);
    expect(500 / acidMolPerL("phosphoric", 85)).toBeCloseTo(34, 0);
  });
});

describe("acidMl", () => {
  it("is proportional to water, and more for more alkalinity or a lower target", () => {
    fc.assert(
      fc.property(acid, milligrams, milligrams, milligrams, (name, a, b, c) => {
        const [low = 0, middle = 0, high = 0] = [a, b, c].sort((one, other) => one - other);
        expect(acidMl(40, high, low, name)).toBeCloseTo(2 * acidMl(20, high, low, name), 9);
        expect(acidMl(20, high, low, name)).toBeGreaterThanOrEqual(acidMl(20, middle, low, name));
        expect(acidMl(20, high, low, name)).toBeGreaterThanOrEqual(acidMl(20, high, middle, name));
      }),
    );
  });

  it("takes more of a weaker acid, and a forgotten strength takes too little rather than too much", () => {
    for (const name of acidNames) {
      const strengths = [10, 30, 50, 75, acids[name].usualPercent].map((percent) => acidMl(20, 100, 0, name, percent));
      for (const [index, ml] of strengths.slice(1).entries()) expect(ml).toBeLessThan(strengths[index] ?? 0);
      expect(acidMl(20, 100, 0, name)).toBe(strengths.at(-1));
    }
    expect(acidMl(20, 100, 0, "lactic")).toBe(acidMl(20, 100, 0, "lactic", 88));
    expect(acidMl(20, 100, 0, "phosphoric")).toBe(acidMl(20, 100, 0, "phosphoric", 85));
  });

  it("is none where there is nothing to take away, and refuses to add alkalinity", () => {
    expect(acidMl(20, 50, 50, "lactic")).toBe(0);
    expect(() => acidMl(20, 50, 60, "lactic")).toThrow(BrewingError);
  });
});

/**
 * The treated water by electroneutrality, from the other side: so much acid is in it, what pH does it have? Written from
 * mass action alone, with all species, also carbonate and hydroxide; constants at 20 °C as Stumm and Morgan, Aquatic
 * Chemistry, table them (6.38, 10.38, 14.17), phosphoric 2.15 and 7.21, lactic 3.86.
 */
function treatedWater(
  alkalinityMgPerL: number,
  acidMolPerLitre: number,
  name: "lactic" | "phosphoric",
): { pH: number; alkalinityMgPerL: number } {
  const [k1, k2, kw] = [10 ** -6.38, 10 ** -10.38, 10 ** -14.17];
  const carbonates = (h: number) => (k1 * h + 2 * k1 * k2) / (h * h + k1 * h + k1 * k2);
  const anions = (h: number): number => {
    if (name === "lactic") return 10 ** -3.86 / (h + 10 ** -3.86);
    const [one, two] = [10 ** -2.15, 10 ** -7.21];
    return (one * h + 2 * one * two) / (h * h + one * h + one * two);
  };
  // Strong cations less strong anions: the alkalinity of the water as it came, at pH 7.5.
  const strong = alkalinityMgPerL / 50043;
  const carbon = (strong - kw / 10 ** -7.5 + 10 ** -7.5) / carbonates(10 ** -7.5);
  let [low, high] = [2, 9];
  for (let step = 0; step < 80; step += 1) {
    const pH = (low + high) / 2;
    const h = 10 ** -pH;
    const charge = strong + h - kw / h - carbon * carbonates(h) - acidMolPerLitre * anions(h);
    if (charge > 0) low = pH;
    else high = pH;
  }
  const h = 10 ** -low;
  return { pH: low, alkalinityMgPerL: 50043 * (carbon * carbonates(h) + kw / h - h) };
}

describe("the treated water, by a balance of charges of its own", () => {
  const dose = (now: number, target: number, name: "lactic" | "phosphoric") =>
    (acidMl(1, now, target, name) / 1000) * acidMolPerL(name, acids[name].usualPercent);

  it.each(
    acidNames.flatMap((name) =>
      [80, 150, 250, 400].flatMap((now) =>
        [25, 40, 60, 75].flatMap((target) => (target > 0.12 * now ? [[name, now, target] as const] : [])),
      ),
    ),
  )("has the alkalinity wished for: %s, %s to %s mg/L", (name, now, target) => {
    const treated = treatedWater(now, dose(now, target, name), name);
    // A part of the alkalinity taken away, which is what the acid is for.
    expect(Math.abs(treated.alkalinityMgPerL - target) / (now - target)).toBeLessThan(0.01);
    expect(treated.pH).toBeGreaterThan(5.4);
  });

  it.each(acidNames.flatMap((name) => [60, 100, 200, 400].map((now) => [name, now] as const)))(
    "has the pH of a mash for a target of 0: %s, %s mg/L",
    (name, now) => {
      expect(treatedWater(now, dose(now, 0, name), name).pH).toBeCloseTo(5.4, 1);
    },
  );
});
