import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call } from "../../../src/functions/call";
import { dayTimeline } from "../../../src/functions/day/timeline";
import { troubles, type Day, type Line } from "../../support/kettle";

/*
 * The clock alone, with a list of steps as somebody would type it: whatever the boil and wherever the hops, a person with
 * a kettle (tests/support/kettle.ts) can do what the lines say. The sheet's own words are walked in tests/sheets.
 */
const steps = [
  ["Heat the water", "before", 30, "Dry hands."],
  ["Flame off; stir the extract in", "before", 10, "Hot syrup sticks and burns."],
  ["Flame on; bring it to the boil", "before", 25, "Stay."],
  ["Soak hoses, lid, by the label", "boil", 35, "Contact time by its label."],
  ["Chiller in, drained, water off", "boil", 18, "Both ends open, outlet in a drain away from people."],
  ["Chill: water on slowly", "after", 25, "The first water is steam: hands clear."],
  ["Into the fermenter", "after", 15, "Glass cracks with hot wort."],
  ["Open the yeast", "after", 5, ""],
  ["Pitch it", "after", 5, "Never seal it."],
];

const names = ["Alder", "Birch", "Cedar", "Dogwood", "Elder", "Fir"];
const place = (boil: number) =>
  fc.oneof(
    { weight: 2, arbitrary: fc.integer({ min: 0, max: boil }) },
    { weight: 1, arbitrary: fc.constant(0) },
    { weight: 3, arbitrary: fc.constantFrom("first wort" as const, "stand" as const, "dry" as const) },
  );
const anyDay = fc.integer({ min: 0, max: 240 }).chain((boil) =>
  fc
    .record({
      boilMinutes: fc.constantFrom(boil, Math.floor(boil / 12)),
      standMinutes: fc.integer({ min: 0, max: 60 }),
      standAfter: fc.integer({ min: 0, max: 15 }),
    })
    .chain((day) => fc.tuple(fc.constant(day), fc.array(place(day.boilMinutes), { maxLength: 6 }))),
);

describe("GYLE.DAY.TIMELINE", () => {
  it("can be followed with a kettle, whatever the boil and wherever the hops", () => {
    fc.assert(
      fc.property(anyDay, ([{ boilMinutes, standMinutes, standAfter }, places]) => {
        const hops = places.map((added, index) => ({ hop: names[index]!, added }));
        const rows = call(dayTimeline, [
          0.25,
          steps,
          hops.length === 0 ? null : hops.map(({ hop, added }) => [hop, 20, added]),
          boilMinutes,
          null,
          boilMinutes === 0 ? "no boil" : "boil",
          80,
          standMinutes,
          standAfter,
        ]);
        const lines = rows.map(([time, boilMinute, what, , caution]): Line => ({
          minute: typeof time === "number" ? (time - 0.25) * 1440 : undefined,
          boilMinute: typeof boilMinute === "number" ? boilMinute : undefined,
          what: String(what),
          caution: String(caution),
        }));
        const day: Day = { boilMinutes, boilsAtC: 100, standMinutes, hops };
        expect(troubles(lines, day)).toEqual([]);
        for (const [what] of steps) expect(lines.filter((line) => line.what === what)).toHaveLength(1);
      }),
      { numRuns: 400 },
    );
  });
});
