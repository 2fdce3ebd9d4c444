import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { balancedLineM, frictionFactor, lineBarPerM } from "../../../src/core/pack/beer-line";

/** Relative: two inputs that differ in their last digit may give the same answer, rounded either way. */
const rounding = 1e-9;

describe("frictionFactor", () => {
  /** F. M. White, Fluid Mechanics, equation 6.54 (Prandtl's smooth-pipe law) and the values listed with it. */
  it.each([
    [4000, 0.0399],
    [1e4, 0.0309],
    [1e5, 0.018],
  ])("at Re %s is %s within 4 %%", (reynolds, printed) => {
    expect(Math.abs(frictionFactor(reynolds) / printed - 1)).toBeLessThan(0.04);
  });

  it("agrees with Prandtl's law, solved step by step, over the flows of a tap", () => {
    for (const reynolds of [4000, 6000, 9000, 20000, 50000]) {
      let f = 0.03;
      for (let step = 0; step < 50; step += 1) f = (2 * Math.log10(reynolds * Math.sqrt(f)) - 0.8) ** -2;
      expect(Math.abs(frictionFactor(reynolds) / f - 1)).toBeLessThan(0.04);
    }
  });
});

describe("the change from laminar to turbulent flow", () => {
  it("is taken at Re 2300, where the friction jumps up (White, chapter 6)", () => {
    expect(frictionFactor(2299)).toBeCloseTo(64 / 2299, 12);
    expect(frictionFactor(2301)).toBeCloseTo(0.316 / 2301 ** 0.25, 12);
    expect(frictionFactor(2301)).toBeGreaterThan(1.6 * frictionFactor(2299));
  });
});

describe("lineBarPerM", () => {
  it("is Hagen and Poiseuille's 128 μ Q / (π D⁴) in slow flow", () => {
    const flowM3PerS = 0.6 / 60000;
    expect(lineBarPerM(10, 0.6) * 1e5).toBeCloseTo((128 * 2.5e-3 * flowM3PerS) / (Math.PI * 0.01 ** 4), 6);
  });

  it("climbs with the flow, and falls steeply with the diameter", () => {
    const flow = fc.double({ min: 0.5, max: 8, noNaN: true });
    const bore = fc.double({ min: 2, max: 13, noNaN: true });
    fc.assert(
      fc.property(flow, flow, bore, bore, (a, b, d, e) => {
        expect(lineBarPerM(d, Math.max(a, b))).toBeGreaterThanOrEqual(lineBarPerM(d, Math.min(a, b)) * (1 - rounding));
        expect(lineBarPerM(Math.max(d, e), a)).toBeLessThanOrEqual(lineBarPerM(Math.min(d, e), a) * (1 + rounding));
      }),
    );
    expect(lineBarPerM(4, 3) / lineBarPerM(8, 3)).toBeCloseTo(2 ** 4.75, 6);
  });
});

describe("balancedLineM", () => {
  it("uses up pressure and height: a metre of height is worth 0.099 bar", () => {
    const length = balancedLineM(0.8, 0.5, 4.76, 3);
    expect(length * lineBarPerM(4.76, 3) + 1010 * 9.80665 * 0.5 * 1e-5).toBeCloseTo(0.8, 12);
    expect(balancedLineM(0.8, -0.5, 4.76, 3)).toBeGreaterThan(length);
  });

  it("refuses a pressure that does not reach the tap", () => {
    expect(() => balancedLineM(0.2, 3, 4.76, 3)).toThrow(BrewingError);
    expect(() => balancedLineM(0.2, 3, 4.76, 3)).toThrow("does not lift the beer");
    const justHeld = (1010 * 9.80665 * 2) / 1e5;
    expect(() => balancedLineM(justHeld, 2, 4.76, 3)).toThrow("does not lift the beer");
  });
});
