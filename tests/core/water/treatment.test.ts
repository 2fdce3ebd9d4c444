import { describe, expect, it } from "vitest";
import { residualAlkalinityMgPerL } from "../../../src/core/water/alkalinity";
import { metabisulfiteMg } from "../../../src/core/water/dechlorinate";

describe("residualAlkalinityMgPerL", () => {
  it("is the alkalinity itself in water without calcium and magnesium", () => {
    expect(residualAlkalinityMgPerL(120, 0, 0)).toBe(120);
  });

  it("is what Kolbach's rule gives in equivalents", () => {
    // 3.5 meq/L of calcium and 7 meq/L of magnesium each take away 1 meq/L, which is half a millimole of CaCO3.
    expect(residualAlkalinityMgPerL(0, (3.5 * 40.078) / 2, 0)).toBeCloseTo(-100.0869 / 2, 8);
    expect(residualAlkalinityMgPerL(0, 0, (7 * 24.305) / 2)).toBeCloseTo(-100.0869 / 2, 8);
  });

  it("may be negative", () => {
    expect(residualAlkalinityMgPerL(20, 100, 10)).toBeLessThan(0);
  });
});

describe("metabisulfiteMg", () => {
  it("takes half a mole for each mole of chlorine, and a quarter more", () => {
    expect(metabisulfiteMg(1, 70.906, "potassium")).toBeCloseTo((222.324 / 2) * 1.25, 8);
    expect(metabisulfiteMg(1, 70.906, "sodium")).toBeCloseTo((190.107 / 2) * 1.25, 8);
  });

  it("is proportional to water and chlorine", () => {
    expect(metabisulfiteMg(40, 1, "sodium")).toBeCloseTo(metabisulfiteMg(20, 2, "sodium"), 10);
  });
});
