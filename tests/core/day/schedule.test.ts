import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clockAt, requireStart } from "../../../src/core/day/clock";
import { brewDay, type HopAddition, type Step } from "../../../src/core/day/schedule";

const names = (steps: readonly Step[], hops: readonly HopAddition[], boilMinutes = 60): string[] =>
  brewDay(steps, hops, boilMinutes).map((event) => `${event.minute} ${event.kind === "step" ? event.step.step : event.kind === "hop" ? event.hop.hop : event.kind}`);

describe("brewDay", () => {
  it("lets the steps before the boil follow one another, and those after it", () => {
    const steps: Step[] = [
      { step: "heat", part: "before", minutes: 20 },
      { step: "steep", part: "before", minutes: 30 },
      { step: "chill", part: "after", minutes: 25 },
      { step: "pitch", part: "after", minutes: 5 },
    ];
    expect(names(steps, [])).toEqual(["0 heat", "20 steep", "50 boil begins", "110 flame out", "110 chill", "135 pitch", "140 done"]);
  });

  it("merges steps and hops of the boil by the clock, steps first and both as listed where they meet", () => {
    const steps: Step[] = [
      { step: "irish moss", part: "boil", minutes: 15 },
      { step: "sugar", part: "boil", minutes: 30 },
      { step: "coil", part: "boil", minutes: 15 },
    ];
    const hops: HopAddition[] = [
      { hop: "late", minutes: 15 },
      { hop: "also late", minutes: 15 },
      { hop: "bitter", minutes: 60 },
    ];
    expect(names(steps, hops)).toEqual(["0 boil begins", "0 bitter", "30 sugar", "45 irish moss", "45 coil", "45 late", "45 also late", "60 flame out", "60 done"]);
  });

  it("puts what is due with no minutes left after flame-out, before the steps that follow", () => {
    const steps: Step[] = [
      { step: "chill", part: "after", minutes: 20 },
      { step: "lid", part: "boil", minutes: 0 },
    ];
    expect(names(steps, [{ hop: "aroma", minutes: 0 }], 30)).toEqual(["0 boil begins", "30 flame out", "30 lid", "30 aroma", "30 chill", "50 done"]);
  });

  it("refuses what would have to go in before the boil, by name", () => {
    expect(() => brewDay([], [{ hop: "Cascade", minutes: 90 }], 60)).toThrow("boil_minutes is 60 min, but Cascade is to boil 90 min");
    expect(() => brewDay([{ step: "Skim", part: "boil", minutes: 61 }], [], 60)).toThrow("Skim is to boil 61 min");
  });

  it("never goes back in time and loses nothing", () => {
    const step = fc.record({ step: fc.string(), part: fc.constantFrom("before" as const, "boil" as const, "after" as const), minutes: fc.integer({ min: 0, max: 60 }) });
    const hop = fc.record({ hop: fc.string(), minutes: fc.integer({ min: 0, max: 60 }) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.array(hop, { maxLength: 8 }), (steps, hops) => {
        const day = brewDay(steps, hops, 60);
        const minutes = day.map(({ minute }) => minute);
        expect(minutes).toEqual([...minutes].sort((one, other) => one - other));
        expect(day).toHaveLength(steps.length + hops.length + 3);
        const outside = steps.filter(({ part }) => part !== "boil").reduce((sum, { minutes: lasts }) => sum + lasts, 0);
        expect(minutes.at(-1)).toBe(60 + outside);
      }),
    );
  });
});

describe("the clock", () => {
  it("takes a time of day or a date with a time, and refuses what is neither", () => {
    expect(requireStart(0.375)).toBe(0.375);
    expect(requireStart(46114.375)).toBe(46114.375);
    expect(() => requireStart(9)).toThrow("start is 9; type a time of day such as 9:00");
    // 32874 is 1 January 1990.
    for (const neither of [1, 32873.9]) expect(() => requireStart(neither)).toThrow("from 1990 on");
    for (const start of [0, 0.999, 32874]) expect(requireStart(start)).toBe(start);
  });

  it("counts minutes of the day", () => {
    expect(clockAt(46114.375, 90)).toBeCloseTo(46114.4375, 9);
    expect(clockAt(0.9, 1440)).toBeCloseTo(1.9, 9);
  });
});
