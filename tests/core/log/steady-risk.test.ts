import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { steadiness, type KnownOfBeer, type Steadiness } from "../../../src/core/log/steady";
import { normalOf, uniformDraws } from "../../support/fermentation-truths";

/** How readings scatter: a standard deviation, and the line that they are rounded to (0: none). */
interface Errors {
  readonly deviation: number;
  readonly line: number;
}

/** Half a line; a good eye at a line; half lines. */
const hydrometers: readonly Errors[] = [
  { deviation: 0.0005, line: 0 },
  { deviation: 0.0003, line: 0.001 },
  { deviation: 0.0003, line: 0.0005 },
];

const known: KnownOfBeer = { originalGravity: 1.05, expectedGravity: 1.013 };

/** Verdicts over logs of a beer that falls by so much a day, read so often a day over so many days, after its fermentation. */
function verdicts({
  fallPerDay,
  perDay,
  days,
  errors,
  logs,
}: {
  fallPerDay: number;
  perDay: number;
  days: number;
  errors: Errors;
  logs: number;
}): (word: Steadiness) => number {
  const uniform = uniformDraws(811);
  const counts = new Map<Steadiness, number>();
  for (let log = 0; log < logs; log += 1) {
    const last = 1.0105 + 0.003 * uniform();
    const readings = Array.from({ length: Math.round(days * perDay) + 1 }, (_, index) => {
      // Nobody reads at the same hour; an instrument does.
      const day = 10 + index / perDay + (perDay === 1 ? 0.2 * (uniform() - 0.5) : 0);
      const seen = last + fallPerDay * (10 + days - day) + errors.deviation * normalOf(uniform);
      return { day, gravity: errors.line === 0 ? seen : Math.round(seen / errors.line) * errors.line };
    });
    const word = steadiness([{ day: 0, gravity: 1.05 }, ...readings], 0.001, known);
    counts.set(word, (counts.get(word) ?? 0) + 1 / logs);
  }
  return (word) => counts.get(word) ?? 0;
}

describe("the risk of a verdict, with five or more readings in the last days", () => {
  for (const errors of hydrometers) {
    for (const days of [4, 5, 7]) {
      it(`${days + 1} daily readings, errors ${errors.deviation}, rounded to ${errors.line}`, () => {
        // The old rule called 55 % of such falling logs steady.
        const falling = verdicts({ fallPerDay: 0.0005, perDay: 1, days, errors, logs: 1500 });
        expect(falling("steady") + falling("stalled"), "falling half a point a day").toBeLessThan(0.1);
        const finished = verdicts({ fallPerDay: 0, perDay: 1, days, errors, logs: 1500 });
        expect(finished("steady"), "finished").toBeGreaterThan(0.9);
        expect(falling("rising") + finished("rising")).toBeLessThan(0.01);
      });
    }
  }
});

describe("dense logs of floating instruments", () => {
  for (const perDay of [4, 12, 24, 96]) {
    it(`${perDay} readings a day: neither rising by chance nor steady too early`, () => {
      const errors = { deviation: 0.001, line: 0 };
      const falling = verdicts({ fallPerDay: 0.0005, perDay, days: 6, errors, logs: 300 });
      const finished = verdicts({ fallPerDay: 0, perDay, days: 6, errors, logs: 300 });
      expect(falling("steady") + falling("stalled")).toBeLessThan(0.1);
      expect(finished("steady")).toBeGreaterThan(0.9);
      for (const fallPerDay of [0, 0.0005, 0.002, 0.01]) {
        expect(
          verdicts({ fallPerDay, perDay, days: 3, errors: { deviation: perDay === 4 ? 0.001 : 0.002, line: 0 }, logs: 300 })("rising"),
          `${fallPerDay} a day`,
        ).toBeLessThan(0.01);
      }
      // A whole fermentation, asked again and again on its way: never at rest before all but two lines of it are done.
      const uniform = uniformDraws(97);
      for (let log = 0; log < 20; log += 1) {
        const readings: { day: number; gravity: number }[] = [];
        for (let index = 0; index < 12 * perDay; index += 1) {
          const day = index / perDay;
          const truly = 1.012 + 0.038 / (1 + Math.exp(1.1 * (day - 3)));
          readings.push({ day, gravity: truly + errors.deviation * normalOf(uniform) });
          if (index % Math.max(1, Math.round(perDay / 2)) !== 0) continue;
          const word = steadiness(readings, 0.001, { originalGravity: 1.05, expectedGravity: 1.012 });
          expect(word, `day ${day}`).not.toBe("rising");
          if (truly > 1.014) expect(word, `day ${day}, truly ${truly.toFixed(4)}`).not.toMatch(/steady|stalled/);
        }
      }
    });
  }

  it("sugar that goes in is a rise, in a dense log as well", () => {
    const readings = Array.from({ length: 97 }, (_, index) => ({ day: index / 24, gravity: index < 60 ? 1.012 : 1.02 }));
    expect(steadiness(readings, 0.001, known)).toBe("rising");
  });
});

describe("two equal readings", () => {
  const log = (...gravities: readonly number[]) => gravities.map((gravity, day) => ({ day, gravity }));

  it("after a real fall are the trade's rule, and the standing says that it rests on two", () => {
    expect(steadiness(log(1.05, 1.03, 1.014, 1.012, 1.012), 0.001, known)).toBe("steady");
    expect(steadiness(log(1.05, 1.013, 1.013), 0.001, {})).toBe("steady");
  });

  it("of a beer that loses half a point a day, read to a line, are none", () => {
    const creeping = log(1.016, 1.016, 1.015, 1.015, 1.014, 1.014, 1.013, 1.013);
    for (let readings = 3; readings <= creeping.length; readings += 1)
      expect(steadiness(creeping.slice(0, readings), 0.001, {}), `${readings} readings`).toBe("nearly");
  });

  it("of wort are a fermentation that has not begun", () => {
    expect(steadiness(log(1.05, 1.05), 0.001, {})).toBe("not begun");
    expect(steadiness(log(1.05, 1.049), 0.001, { originalGravity: 1.05 })).toBe("not begun");
    expect(steadiness(log(1.05, 1.05, 1.05), 0.001, { expectedGravity: 1.012 })).toBe("not begun");
    // A weak beer whose beginning nobody knows passes for beer; with its original gravity it does not.
    expect(steadiness(log(1.02, 1.02), 0.001, {})).toBe("steady");
    expect(steadiness(log(1.02, 1.02), 0.001, { originalGravity: 1.022 })).toBe("not begun");
    // Falling, if only a little, is at work.
    expect(steadiness(log(1.05, 1.048), 0.001, {})).toBe("working");
  });

  it("well above the end are a stall: more than 0.003, or more than half of the points where none is expected", () => {
    expect(steadiness(log(1.05, 1.0135, 1.0135), 0.001, { expectedGravity: 1.01 })).toBe("stalled");
    expect(steadiness(log(1.05, 1.013, 1.013), 0.001, { expectedGravity: 1.01 })).toBe("steady");
    expect(steadiness(log(1.05, 1.026, 1.026), 0.001, {})).toBe("stalled");
    expect(steadiness(log(1.05, 1.024, 1.024), 0.001, {})).toBe("steady");
  });

  it("before hops went in say nothing about the time after", () => {
    const beer = log(1.05, 1.03, 1.014, 1.012, 1.012, 1.012);
    expect(steadiness(beer, 0.001, known)).toBe("steady");
    expect(steadiness(beer, 0.001, { ...known, countFrom: 4.5 })).toBe("working");
    expect(steadiness(beer, 0.001, { ...known, countFrom: 5.5 })).toBe("working");
    expect(steadiness(beer, 0.001, { ...known, countFrom: 3.5 })).toBe("working");
    // The last two of these readings are 23 hours and two days, less an hour, from the hops.
    expect(steadiness(beer, 0.001, { ...known, countFrom: 3 + 1 / 24 })).toBe("steady");
    expect(steadiness(beer, 0.001, { ...known, countFrom: 3 + 1.1 / 24 })).toBe("working");
    expect(steadiness(log(1.05, 1.03, 1.014, 1.012, 1.012, 1.0115, 1.0102), 0.001, { ...known, countFrom: 4 })).toBe("nearly");
  });

  it("after hops do not end a slow fall that began before them", () => {
    const slow = log(1.05, 1.016, 1.016, 1.015, 1.015, 1.014, 1.014, 1.013, 1.013);
    expect(steadiness(slow, 0.001, known)).toBe("nearly");
    for (let from = 0.5; from < 9; from += 0.25)
      expect(["nearly", "working"], `from ${from}`).toContain(steadiness(slow, 0.001, { ...known, countFrom: from }));
  });

  it("are never taken for more because something was added on a day, whatever they are", () => {
    const lax = ["steady", "nearly", "working"];
    const gravity = fc.integer({ min: 1009, max: 1018 }).map((points) => points / 1000);
    fc.assert(
      fc.property(
        fc.array(gravity, { minLength: 2, maxLength: 9 }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.boolean(),
        (gravities, countFrom, sorted) => {
          const beer = log(1.05, ...(sorted ? gravities.sort((one, other) => other - one) : gravities));
          const [without, dated] = [steadiness(beer, 0.001, known), steadiness(beer, 0.001, { ...known, countFrom })];
          if (lax.includes(without)) expect(lax.indexOf(dated)).toBeGreaterThanOrEqual(lax.indexOf(without));
          else expect(dated).toBe(without);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
