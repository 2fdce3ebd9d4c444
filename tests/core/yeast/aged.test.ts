import { describe, expect, it } from "vitest";
import { alivePercent } from "../../../src/core/yeast/aged";

describe("alivePercent", () => {
  it("dies by the same share every day: followed a day at a time", () => {
    let alive = 100;
    const eachDay = 1 - 0.2 / 30.0;
    for (let day = 0; day < 90; day += 1) alive *= eachDay;
    // A fifth in 30 days is 0.741 % a day, not a thirtieth of it: the straight line lies above, and meets at the maker's day only.
    expect(alivePercent(46114, 46204, 80, 30)).toBeLessThan(alive);
    expect(alivePercent(46114, 46204, 80, 30)).toBeCloseTo(51.2, 9);
  });

  it("halves with every half-life, and is whole on the first day, whatever the time of day", () => {
    expect([0, 100, 200, 300].map((age) => alivePercent(46114, 46114 + age, 50, 100))).toEqual([100, 50, 25, 12.5]);
    expect(alivePercent(46114.9, 46115.1, 50, 1)).toBe(50);
  });

  it("refuses a day before the pack was made", () => {
    expect(() => alivePercent(46114, 46113, 80, 30)).toThrow(/today is before made_on/);
  });
});
