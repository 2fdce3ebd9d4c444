import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bitternessIbu, type Boil, type HopAddition } from "../../../src/core/hops/bitterness";
import { isomerisationRatePerMinute, relativeIsomerisation } from "../../../src/core/hops/isomerisation";
import { hopUtilisation } from "../../../src/core/hops/utilisation";

/** The two printed curves; the kinetic model has its own tests in kinetic.test.ts, since it falls again after long. */
const model = fc.constantFrom("tinseth" as const, "rager" as const);
const minutes = fc.double({ min: 0, max: 240, noNaN: true });
const gravity = fc.double({ min: 1, max: 1.2, noNaN: true });

/** Two inputs that differ in their last digit may give the same answer, rounded either way. */
const rounding = 1e-9;

const boil: Boil = {
  volumeL: 20,
  gravity: 1.05,
  model: "tinseth",
  boilsAtC: 100,
  minutes: 60,
  after: { stand: undefined, chilling: { toC: 20, minutes: 0 } },
};
const hop: HopAddition = { massG: 30, alphaPercent: 8, added: 60 };

describe("hopUtilisation", () => {
  it("climbs with time and falls with gravity, by both curves", () => {
    fc.assert(
      fc.property(model, minutes, minutes, gravity, (name, a, b, sg) => {
        expect(hopUtilisation(Math.max(a, b), sg, name)).toBeGreaterThanOrEqual(hopUtilisation(Math.min(a, b), sg, name) - rounding);
      }),
    );
    fc.assert(
      fc.property(model, minutes, gravity, gravity, (name, t, a, b) => {
        expect(hopUtilisation(t, Math.max(a, b), name)).toBeLessThanOrEqual(hopUtilisation(t, Math.min(a, b), name) + rounding);
      }),
    );
  });

  it("stays a share that hops can give", () => {
    fc.assert(
      fc.property(model, minutes, gravity, (name, t, sg) => {
        const share = hopUtilisation(t, sg, name);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(0.4);
      }),
    );
  });

  it("gives nothing at 0 minutes by Tinseth, 5 % by Rager", () => {
    expect(hopUtilisation(0, 1.05, "tinseth")).toBe(0);
    expect(hopUtilisation(0, 1.05, "rager")).toBeCloseTo(0.05, 2);
  });

  it("takes Rager's gravity correction above 1.050 only", () => {
    expect(hopUtilisation(45, 1.03, "rager")).toBe(hopUtilisation(45, 1.05, "rager"));
    expect(hopUtilisation(45, 1.05, "rager") / hopUtilisation(45, 1.09, "rager")).toBeCloseTo(1.2, 12);
  });
});

describe("isomerisation", () => {
  it("has the activation energy of the paper, 98.6 kJ/mol", () => {
    const [cool, hot] = [363.15, 403.15];
    const slope = Math.log(isomerisationRatePerMinute(hot - 273.15) / isomerisationRatePerMinute(cool - 273.15)) / (1 / cool - 1 / hot);
    expect((slope * 8.314) / 1000).toBeCloseTo(98.6, 1);
  });

  it("halves the alpha acid in 55.5 minutes at 100 °C", () => {
    expect(Math.LN2 / isomerisationRatePerMinute(100)).toBeCloseTo(55.5, 1);
  });

  it("runs at 0.65 of the speed where water boils at 95 °C", () => {
    expect(relativeIsomerisation(94.983)).toBeCloseTo(0.6485, 4);
    expect(relativeIsomerisation(100)).toBe(1);
  });
});

describe("bitternessIbu", () => {
  it("is proportional to mass and alpha, and inversely to volume", () => {
    const once = bitternessIbu(hop, boil);
    expect(bitternessIbu({ ...hop, massG: 60 }, boil)).toBeCloseTo(2 * once, 10);
    expect(bitternessIbu({ ...hop, alphaPercent: 4 }, boil)).toBeCloseTo(once / 2, 10);
    expect(bitternessIbu(hop, { ...boil, volumeL: 40 })).toBeCloseTo(once / 2, 10);
  });

  it("is the alpha acid in mg/L times the utilisation", () => {
    expect(bitternessIbu(hop, boil)).toBeCloseTo(120 * hopUtilisation(60, 1.05, "tinseth"), 10);
  });

  it("falls with the temperature of the boil", () => {
    const temperature = fc.double({ min: 80, max: 102, noNaN: true });
    fc.assert(
      fc.property(temperature, temperature, (a, b) => {
        const at = (boilsAtC: number) => bitternessIbu(hop, { ...boil, boilsAtC });
        expect(at(Math.min(a, b))).toBeLessThanOrEqual(at(Math.max(a, b)) + rounding);
      }),
    );
  });
});
