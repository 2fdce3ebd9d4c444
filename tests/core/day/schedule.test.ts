import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clockAt, requireStart } from "../../../src/core/day/clock";
import { brewDay, type HopAddition, type Step } from "../../../src/core/day/schedule";

const names = (steps: readonly Step[], hops: readonly HopAddition[], boilMinutes = 60): string[] =>
  brewDay(steps, hops, boilMinutes).map(
    (event) => `${event.minute} ${event.kind === "step" ? event.step.step : event.kind === "hop" ? event.hop.hop : event.kind}`,
  );

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
      { hop: "late", added: 15 },
      { hop: "also late", added: 15 },
      { hop: "bitter", added: 60 },
    ];
    expect(names(steps, hops)).toEqual([
      "0 boil begins",
      "0 bitter",
      "30 sugar",
      "45 irish moss",
      "45 coil",
      "45 late",
      "45 also late",
      "60 flame out",
      "60 done",
    ]);
  });

  it("puts what is due with no minutes left after flame-out, before the steps that follow", () => {
    const steps: Step[] = [
      { step: "chill", part: "after", minutes: 20 },
      { step: "lid", part: "boil", minutes: 0 },
    ];
    expect(names(steps, [{ hop: "aroma", added: 0 }], 30)).toEqual([
      "0 boil begins",
      "30 flame out",
      "30 lid",
      "30 aroma",
      "31 chill",
      "51 done",
    ]);
    expect(names(steps, [], 30)).toEqual(["0 boil begins", "30 flame out", "30 lid", "30 chill", "50 done"]);
  });

  it("refuses a hop that would have to go in before the boil, by name", () => {
    expect(() => brewDay([], [{ hop: "Cascade", added: 90 }], 60)).toThrow("boil_minutes is 60 min, but Cascade is to boil 90 min");
    expect(() => brewDay([], [{ hop: "", added: 1 }], 0)).toThrow("boil_minutes is 0 min, but a hop without a name is to boil 1 min");
  });

  it("keeps a step within the boil that there is, and before flame-out where there is none", () => {
    const steps: Step[] = [
      { step: "soak", part: "boil", minutes: 35 },
      { step: "coil", part: "boil", minutes: 15 },
      { step: "lid", part: "boil", minutes: 0 },
      { step: "chill", part: "after", minutes: 20 },
    ];
    expect(names(steps, [], 20)).toEqual(["0 boil begins", "0 soak", "5 coil", "20 flame out", "20 lid", "20 chill", "40 done"]);
    expect(names(steps, [], 0)).toEqual(["0 soak", "0 coil", "0 no boil", "0 lid", "0 chill", "20 done"]);
    expect(names([{ step: "heat", part: "before", minutes: 30 }, ...steps], [], 0)).toEqual([
      "0 heat",
      "0 soak",
      "15 coil",
      "30 no boil",
      "30 lid",
      "30 chill",
      "50 done",
    ]);
  });

  it("puts first wort before the step that brings it to the boil, the stand before the chilling, and dry hops on no minute of the day", () => {
    const steps: Step[] = [
      { step: "steep", part: "before", minutes: 30 },
      { step: "heat", part: "before", minutes: 20 },
      { step: "chill", part: "after", minutes: 25 },
    ];
    const hops: HopAddition[] = [
      { hop: "dry", added: "dry" },
      { hop: "stand", added: "stand" },
      { hop: "out", added: 0 },
      { hop: "first", added: "first wort" },
    ];
    const day = brewDay(steps, hops, 60, { minutes: 20, afterMinutes: 4 }).map(
      ({ kind, minute, ...event }) => `${minute} ${"hop" in event ? event.hop.hop : kind}`,
    );
    expect(day).toEqual([
      "0 step",
      "30 first",
      "30 step",
      "50 boil begins",
      "110 flame out",
      "110 out",
      "111 stand",
      "115 stand",
      "135 step",
      "160 done",
      "undefined dry",
    ]);
  });

  it("never goes back in time and loses nothing, whatever the boil", () => {
    const step = fc.record({
      step: fc.string(),
      part: fc.constantFrom("before" as const, "boil" as const, "after" as const),
      minutes: fc.integer({ min: 0, max: 60 }),
    });
    const hop = (boil: number) =>
      fc.record({
        hop: fc.string(),
        added: fc.oneof(fc.integer({ min: 0, max: boil }), fc.constantFrom("first wort" as const, "stand" as const, "dry" as const)),
      });
    const day = fc
      .integer({ min: 0, max: 240 })
      .chain((boil) =>
        fc.tuple(
          fc.constant(boil),
          fc.array(step, { maxLength: 12 }),
          fc.array(hop(boil), { maxLength: 8 }),
          fc.integer({ min: 0, max: 60 }),
          fc.integer({ min: 0, max: 20 }),
        ),
      );
    fc.assert(
      fc.property(day, ([boil, steps, hops, minutes, afterMinutes]) => {
        const events = brewDay(steps, hops, boil, { minutes, afterMinutes });
        const timed = events.flatMap(({ minute }) => (minute === undefined ? [] : [minute]));
        expect(timed).toEqual([...timed].sort((one, other) => one - other));
        const stands = minutes > 0 || hops.some(({ added }) => added === "stand");
        expect(events).toHaveLength(steps.length + hops.length + (boil === 0 ? 2 : 3) + (stands ? 1 : 0));
        expect(events.length - timed.length).toBe(hops.filter(({ added }) => added === "dry").length);
        for (const { step: listed } of steps.map((step) => ({ step })))
          expect(events.filter((event) => event.kind === "step" && event.step === listed)).toHaveLength(1);
        const outside = steps.filter(({ part }) => part !== "boil").reduce((sum, { minutes: lasts }) => sum + lasts, 0);
        expect(timed.at(-1) ?? 0).toBeGreaterThanOrEqual(boil + outside + (stands ? minutes + afterMinutes : 0));
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
