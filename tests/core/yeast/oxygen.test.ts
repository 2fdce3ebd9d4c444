import { describe, expect, it } from "vitest";
import { oxygenMgPerL } from "../../../src/core/yeast/oxygen";
import { dissolvedMoles, vapourBar } from "../pack/closed-vessel-physics";

describe("oxygenMgPerL", () => {
  /** Henry's constant and vapour pressure by the international guideline (IAPWS G7-04): another equation, another vapour. They agree to 1 %. */
  it.each([1, 5, 10, 15, 20, 25, 30, 40])("is that of IAPWS G7-04 in water at %d °C", (celsius) => {
    const bar = 0.20946 * (1.01325 - vapourBar(celsius));
    const ratio = oxygenMgPerL(celsius, 1, "air", 1.01325) / (31998 * dissolvedMoles("o2", celsius) * bar);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.011);
  });

  it("goes with the pressure of the dry gas: pure oxygen gives 1 / 0.20946 of it", () => {
    expect(oxygenMgPerL(15, 1.05, "oxygen", 1) / oxygenMgPerL(15, 1.05, "air", 1)).toBeCloseTo(1 / 0.20946, 9);
    expect(oxygenMgPerL(15, 1, "air", 0.5)).toBeLessThan(0.5 * oxygenMgPerL(15, 1, "air", 1));
  });

  /** From memory: air-saturated wort of 12 °P holds 10 to 20 % less than water. */
  it("lets less into wort than into water, by a tenth to a fifth at 12 °P", () => {
    const share = oxygenMgPerL(15, 1.04837, "air", 1.01325) / oxygenMgPerL(15, 1, "air", 1.01325);
    expect(share).toBeGreaterThan(0.8);
    expect(share).toBeLessThan(0.9);
  });
});
