import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { fillBottles } from "../../../src/core/pack/bottles";
import { conditioningDays } from "../../../src/core/pack/ready";

describe("fillBottles", () => {
  it("leaves less than a bottle, and loses no beer", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (volumeL, bottleL, lossL) => {
          const { bottles, leftL } = fillBottles(volumeL, bottleL, lossL);
          expect(Number.isInteger(bottles)).toBe(true);
          expect(leftL).toBeLessThan(bottleL);
          expect(bottles * bottleL + leftL + lossL).toBeCloseTo(volumeL, 6);
        },
      ),
    );
  });

  it("counts the last bottle when the beer fills it exactly", () => {
    expect(fillBottles(19, 0.5, 0)).toEqual({ bottles: 38, leftL: 0 });
    expect(fillBottles(3.3, 0.33, 0).bottles).toBe(10);
  });

  it("refuses to lose more than there is", () => {
    expect(fillBottles(2, 0.5, 2).bottles).toBe(0);
    expect(() => fillBottles(2, 0.5, 2.1)).toThrow(BrewingError);
    expect(() => fillBottles(2, 0.5, 2.1)).toThrow("no beer is left to bottle");
    // 0.1 + 0.2 is a hair above 0.3 in binary: a loss of all the beer is no more than the beer.
    expect(fillBottles(0.3, 0.5, 0.1 + 0.2)).toEqual({ bottles: 0, leftL: 0 });
  });
});

describe("conditioningDays", () => {
  it("takes ten days at 21 °C, twice that ten degrees cooler, and never less than a week", () => {
    expect(conditioningDays(21)).toBe(10);
    expect(conditioningDays(11)).toBe(20);
    expect(conditioningDays(30)).toBe(7);
  });

  it("rounds up: 10 × 2^1.001 = 20.01 days are 21, 10 × 2^0.5 = 14.14 are 15", () => {
    expect(conditioningDays(10.99)).toBe(21);
    expect(conditioningDays(16)).toBe(15);
  });

  it("never takes longer when it is warmer, and stays within a month", () => {
    const days = Array.from({ length: 41 }, (_, half) => conditioningDays(10 + half / 2));
    expect(days).toEqual([...days].sort((one, other) => other - one));
    expect(days[0]).toBeLessThanOrEqual(28);
    expect(days.at(-1)).toBe(7);
  });
});
