import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { agedAlphaPercent, hopPackages } from "../../../src/core/hops/storage";
import { bitternessPerPoint, massForSameAlpha } from "../../../src/core/hops/swap";
import { callScalar } from "../../../src/functions/call";
import { hopsSwap } from "../../../src/functions/hops/swap";

const days = fc.double({ min: 0, max: 2000, noNaN: true });
const temperature = fc.double({ min: -30, max: 30, noNaN: true });

describe("agedAlphaPercent", () => {
  it("loses nothing in no time, and the variety's loss in 180 days at 20 °C in the open", () => {
    expect(agedAlphaPercent(8, 0, 20, 30, "loose")).toBe(8);
    expect(agedAlphaPercent(8, 180, 20, 45, "loose")).toBeCloseTo(8 * 0.55, 12);
  });

  it("loses at three quarters of the speed when sealed, at half behind a barrier, and half as fast for each 15 °C cooler", () => {
    const speed = (stored: number, container: "loose" | "sealed" | "barrier") =>
      -Math.log(agedAlphaPercent(8, 300, stored, 30, container) / 8);
    expect(speed(20, "sealed") / speed(20, "loose")).toBeCloseTo(0.75, 12);
    expect(speed(20, "barrier") / speed(20, "loose")).toBeCloseTo(0.5, 12);
    expect(speed(5, "loose") / speed(20, "loose")).toBeCloseTo(0.5, 12);
    expect(speed(35, "loose") / speed(20, "loose")).toBeCloseTo(2, 12);
  });

  it("adds up over two stores in a row", () => {
    fc.assert(
      fc.property(days, days, temperature, fc.constantFrom(...hopPackages), (first, second, stored, container) => {
        const between = agedAlphaPercent(8, first, stored, 30, container);
        expect(agedAlphaPercent(between, second, stored, 30, container)).toBeCloseTo(
          agedAlphaPercent(8, first + second, stored, 30, container),
          10,
        );
      }),
    );
  });

  it("keeps more in the cold and in better packages", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 2000, noNaN: true }), temperature, (age, stored) => {
        expect(agedAlphaPercent(8, age, stored - 5, 30, "loose")).toBeGreaterThan(agedAlphaPercent(8, age, stored, 30, "loose"));
        expect(agedAlphaPercent(8, age, stored, 30, "barrier")).toBeGreaterThan(agedAlphaPercent(8, age, stored, 30, "sealed"));
      }),
    );
  });
});

describe("massForSameAlpha", () => {
  it("keeps the alpha acid, and comes back when swapped back", () => {
    const alpha = fc.double({ min: 0.5, max: 30, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1000, noNaN: true }), alpha, alpha, (mass, before, after) => {
        const swapped = massForSameAlpha(mass, before, after);
        expect((swapped * after) / (mass * before)).toBeCloseTo(1, 12);
        expect(massForSameAlpha(swapped, after, before) / mass).toBeCloseTo(1, 12);
      }),
    );
  });

  it("is not fooled by a share or a lost decimal point", () => {
    expect(callScalar(hopsSwap, [30, 0.08, 6])).toMatchObject({ message: expect.stringContaining("write 8 for 8 %") as string });
    expect(callScalar(hopsSwap, [30, 8, 55])).toMatchObject({ message: expect.stringContaining("write 5.5") as string });
  });
});

describe("bitternessPerPoint", () => {
  it("gives the bitterness back when multiplied by the points", () => {
    expect(bitternessPerPoint(35, 1.056) * 56).toBeCloseTo(35, 10);
  });
});
