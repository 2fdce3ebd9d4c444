import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { bitternessIbu } from "../../../src/core/hops/bitterness";
import type { Cooling } from "../../../src/core/hops/cooling";
import { standIbu, type Stand } from "../../../src/core/hops/stand";
import { callScalar } from "../../../src/functions/call";
import { functionNamed } from "../../../src/functions/registry";

const hops: Stand = { massG: 50, alphaPercent: 10, volumeL: 20, gravity: 1.05, boiledMinutes: 0 };
const stand: Cooling = { fromC: 95, toC: 80, minutes: 20, surroundingsC: 15 };

/** IBU: two times that differ in their last digit may give the same bitterness, rounded either way. */
const rounding = 1e-9;

describe("standIbu", () => {
  it("is the kinetic boil where the wort stays at 100 °C", () => {
    const boiling: Cooling = { ...stand, fromC: 100, toC: 100 };
    const boil = (added: number) =>
      bitternessIbu(
        { massG: 50, alphaPercent: 10, added },
        {
          volumeL: 20,
          gravity: 1.05,
          model: "kinetic",
          boilsAtC: 100,
          minutes: 60,
          after: { stand: undefined, chilling: { toC: 20, minutes: 0 } },
        },
      );
    expect(standIbu(hops, boiling)).toBeCloseTo(boil(20), 9);
    expect(standIbu({ ...hops, boiledMinutes: 40 }, boiling)).toBeCloseTo(boil(60) - boil(40), 9);
  });

  it("gives more the longer it stands and the warmer it stays", () => {
    const minutes = fc.double({ min: 0, max: 120, noNaN: true });
    const warm = fc.double({ min: 60, max: 95, noNaN: true });
    fc.assert(
      fc.property(minutes, minutes, warm, warm, (a, b, one, other) => {
        const at = (time: number, toC: number) => standIbu(hops, { ...stand, minutes: time, toC });
        expect(at(Math.max(a, b), one)).toBeGreaterThanOrEqual(at(Math.min(a, b), one) - rounding);
        expect(at(a, Math.max(one, other))).toBeGreaterThanOrEqual(at(a, Math.min(one, other)) - rounding);
      }),
    );
  });

  it("hardly gains below 60 °C: an hour from 60 to 50 °C gives less than a tenth of the same at 95 °C", () => {
    const cool = standIbu(hops, { ...stand, fromC: 60, toC: 50, minutes: 60 });
    expect(cool).toBeLessThan(0.1 * standIbu(hops, { ...stand, fromC: 95, toC: 95, minutes: 60 }));
    expect(cool).toBeGreaterThan(0);
  });

  it("adds less to hops that have boiled: their alpha acid is used up, and in the end nothing", () => {
    const added = [0, 15, 60, 120].map((boiledMinutes) => standIbu({ ...hops, boiledMinutes }, stand));
    for (const [index, ibu] of added.slice(1).entries()) expect(ibu).toBeLessThan(added[index] ?? 0);
    // By the equations they lose: 4 hours are past the most. A stand that takes bitterness away is no answer to what it adds.
    expect(standIbu({ ...hops, boiledMinutes: 240 }, { ...stand, fromC: 100, toC: 100, minutes: 60 })).toBe(0);
    for (const boiledMinutes of [0, 37, 240]) expect(standIbu({ ...hops, boiledMinutes }, { ...stand, minutes: 0 })).toBe(0);
  });

  it("splits into a stand and a chilling that follows", () => {
    const toEighty = standIbu(hops, stand);
    const chilling = standIbu(hops, { ...stand, fromC: 80, toC: 20, minutes: 15 });
    expect(chilling).toBeGreaterThan(0);
    expect(chilling).toBeLessThan(0.15 * toEighty);
  });

  it("cools towards a room of 15 °C in the worksheet, and takes no share of 1 for an alpha acid", () => {
    const typed = (alpha: number) => callScalar(functionNamed("HOPS.STAND"), [50, alpha, 20, 1.05, 20, 95, 20]);
    expect(typed(10)).toBeCloseTo(standIbu(hops, { ...stand, toC: 20 }), 9);
    expect(typed(0.3)).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("alpha is 0.3 %; it must be 0 % or above 0.3 % (write 30 for 30 %)") as string,
    });
    for (const alpha of [0, 0.301]) expect(typed(alpha)).toBeTypeOf("number");
  });

  it("refuses wort that warms up", () => {
    expect(() => standIbu(hops, { ...stand, toC: 96 })).toThrow(BrewingError);
    expect(() => standIbu(hops, { ...stand, toC: 96 })).toThrow("to is above from");
  });
});
