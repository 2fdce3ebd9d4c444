import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { acidMl, acidMolPerL, acidNames, acids, equivalentsPerMole } from "../../../src/core/water/acid";

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
    fc.assert(fc.property(acid, pH, pH, (name, a, b) => equivalentsPerMole(name, Math.max(a, b)) >= equivalentsPerMole(name, Math.min(a, b)) - 1e-12));
  });
});

describe("the density of phosphoric acid", () => {
  /** Handbook values at 20 °C: a table of inorganic acids (10 to 40 %), the ECHA dossier's ten handbooks (50 to 85 %). */
  it.each([[10, 1.0531], [20, 1.1135], [30, 1.1804], [40, 1.2536], [50, 1.335], [75, 1.575], [85, 1.69]])("at %s %% is %s g/mL within 0.7 %%", (percent, density) => {
    expect(Math.abs(acids.phosphoric.density(percent / 100) / density - 1)).toBeLessThan(0.007);
  });
});

describe("the densities", () => {
  it("go through the points that they were drawn through: lactic 1.209 at 88 %, phosphoric 1.053 at 10 % and 1.685 at 85 %", () => {
    expect(acids.lactic.density(0.88)).toBeCloseTo(1.209, 3);
    expect(acids.phosphoric.density(0.1)).toBeCloseTo(1.053, 3);
    expect(acids.phosphoric.density(0.85)).toBeCloseTo(1.685, 3);
  });
});

describe("acidMolPerL", () => {
  it("is 11.8 for lactic acid of 88 %, 1.07 and 14.6 for phosphoric of 10 and 85 %", () => {
    expect(acidMolPerL("lactic", 88)).toBeCloseTo(11.81, 1);
    expect(acidMolPerL("phosphoric", 10)).toBeCloseTo(1.075, 2);
    expect(acidMolPerL("phosphoric", 85)).toBeCloseTo(14.62, 1);
  });
});

describe("acidMl", () => {
  it("is proportional to water and to the alkalinity taken away", () => {
    fc.assert(
      fc.property(acid, milligrams, milligrams, (name, a, b) => {
        const [now, target] = [Math.max(a, b), Math.min(a, b)];
        expect(acidMl(40, now, target, name)).toBeCloseTo(2 * acidMl(20, now, target, name), 9);
        expect(acidMl(20, now, target, name) + acidMl(20, target, 0, name)).toBeCloseTo(acidMl(20, now, 0, name), 9);
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
