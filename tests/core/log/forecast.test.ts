import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bandOnDay, fitFermentation, requireFall } from "../../../src/core/log/fit";
import { forecastOf } from "../../../src/core/log/forecast";
import { asCurve, dayWithin, gravityOnDay, logisticModel, steepestFallPerDay, type FermentationCurve } from "../../../src/core/log/logistic";
import { lowestPossibleGravity } from "../../../src/core/log/possible";
import { readingsInOrder } from "../../../src/core/log/readings";
import { BrewingError } from "../../../src/core/brewing-error";
import { realExtractByBalling } from "../../../src/core/beer/alcohol";
import { platoFromGravity } from "../../../src/core/wort/plato";
import { allDrawn } from "../../support/drawn";
import { ale, logOf } from "../../support/fermentation-log";

function refusal(make: () => unknown): string {
  try {
    make();
  } catch (problem) {
    if (problem instanceof BrewingError) return `${problem.reason}: ${problem.message}`;
    throw problem;
  }
  return "an answer";
}

describe("the logistic curve", () => {
  it("has the slopes that small steps show", () => {
    const parameters = [1.05, 1.01, 1.6, 2.2];
    for (const day of [0, 1.7, 2.2, 5]) {
      logisticModel.gradient(parameters, day).forEach((slope, index) => {
        const moved = (step: number) => logisticModel.value(parameters.map((value, at) => (at === index ? value + step : value)), day);
        expect(slope).toBeCloseTo((moved(1e-5) - moved(-1e-5)) / 2e-5, 6);
      });
    }
  });

  it("falls most in its middle, by B (upper − lower) / 4 a day (Speers et al. 2003)", () => {
    const fall = (day: number) => (gravityOnDay(ale, day - 0.001) - gravityOnDay(ale, day + 0.001)) / 0.002;
    expect(fall(2.2)).toBeCloseTo(steepestFallPerDay(ale), 7);
    expect(fall(2)).toBeLessThan(fall(2.2));
    expect(fall(2.4)).toBeLessThan(fall(2.2));
  });

  it("comes within a line of its end on the day that it says", () => {
    expect(gravityOnDay(ale, dayWithin(ale, 0.001)) - ale.lowerGravity).toBeCloseTo(0.001, 12);
    expect(dayWithin({ ...ale, upperGravity: 1.0105 }, 0.001)).toBe(-Infinity);
  });
});

describe("the ± of a forecast", () => {
  /** A fit whose ± is one of the slopes that it is asked with, so that they can be looked at one by one. */
  const asked = (ends: "fitted" | "held", index: number) => forecastOf({ curve: ale, ends, plusOrMinus: (slopes) => slopes[index] ?? NaN }, 3);

  it("of the day has the slopes that small steps show, against each of the four numbers", () => {
    const names = ["upperGravity", "lowerGravity", "steepnessPerDay", "middleDay"] as const;
    for (const [index, name] of names.entries()) {
      const step = 1e-7;
      const moved = (by: number) => dayWithin({ ...ale, [name]: ale[name] + by }, 0.001);
      const slope = (moved(step) - moved(-step)) / (2 * step);
      expect(asked("fitted", index).dayPlusOrMinus / slope, name).toBeCloseTo(1, 5);
      expect(slope, name).not.toBe(0);
    }
  });

  it("of the final gravity is that of the curve's lower end, and of nothing else", () => {
    expect([0, 1, 2, 3].map((index) => asked("fitted", index).finalGravityPlusOrMinus)).toEqual([0, 1, 0, 0]);
    expect(asked("held", 1).finalGravityPlusOrMinus).toBeUndefined();
  });

  it("goes with the day within one line (0.001) of the end: M + ln 39 / B for a fall of 40 points", () => {
    expect(asked("fitted", 0).day).toBeCloseTo(2.2 + Math.log(39) / 1.6, 10);
  });
});

describe("the lowest gravity that can be", () => {
  it("leaves no real extract, or stops where the sugar table ends", () => {
    for (const original of [1.03, 1.05, 1.08]) {
      expect(realExtractByBalling(platoFromGravity(original), platoFromGravity(lowestPossibleGravity(original)))).toBeCloseTo(0, 9);
    }
    expect(lowestPossibleGravity(1.2)).toBe(0.98);
    expect(lowestPossibleGravity(0.99)).toBe(1);
  });
});

describe("a fall", () => {
  it("of 0.005 is enough for a curve, also where binary fractions fall a hair short of it", () => {
    expect(1.055 - 1.05).toBeLessThan(0.005);
    expect(refusal(() => requireFall(1.055 - 1.05))).toBe("an answer");
    expect(refusal(() => requireFall(0.00497))).toContain("fallen by 0.005, and a curve needs 0.005");
  });

  it("that is a rise is called none", () => {
    expect(refusal(() => requireFall(-0.003))).toContain("fallen by 0.000");
  });
});

describe("fitFermentation", () => {
  it("finds a known curve again from exact readings", () => {
    const { curve, ends } = fitFermentation(logOf(ale, [0, 1, 2, 3, 4, 6, 9]));
    expect(ends).toBe("fitted");
    expect(curve.lowerGravity).toBeCloseTo(1.01, 6);
    expect(curve.upperGravity).toBeCloseTo(1.05, 6);
    expect(curve.steepnessPerDay).toBeCloseTo(1.6, 4);
    expect(curve.middleDay).toBeCloseTo(2.2, 4);
  });

  it("finds it with dates as well as with days", () => {
    const dated = logOf({ ...ale, middleDay: 46002.2 }, [46000, 46001, 46002, 46003, 46004, 46006]);
    expect(fitFermentation(dated).curve.middleDay).toBeCloseTo(46002.2, 4);
  });

  it("holds the known end within its band 19 times out of 20, with a hydrometer's noise", () => {
    let inside = 0;
    let all = 0;
    const error = fc.double({ min: -0.001, max: 0.001, noNaN: true });
    fc.assert(
      fc.property(fc.array(error, { minLength: 9, maxLength: 9 }), fc.double({ min: 1, max: 2.5, noNaN: true }), fc.double({ min: 1.5, max: 3, noNaN: true }), (errors, steepnessPerDay, middleDay) => {
        const fit = fitFermentation(logOf({ ...ale, steepnessPerDay, middleDay }, [0, 1, 1.5, 2, 2.5, 3, 4, 5, 7], errors.map((value, index) => (index === 8 ? -Math.abs(value) : value))));
        if (fit.ends !== "fitted") return;
        const forecast = forecastOf(fit, 7);
        all += 1;
        if (Math.abs(forecast.finalGravity - 1.01) <= (forecast.finalGravityPlusOrMinus ?? 0)) inside += 1;
        expect(Math.abs(forecast.finalGravity - 1.01)).toBeLessThan(0.004);
        expect(Math.abs(fit.curve.middleDay - middleDay)).toBeLessThan(0.5);
      }),
      { seed: 7, numRuns: 200 },
    );
    if (!allDrawn) return;
    expect(all).toBeGreaterThan(150);
    expect(inside / all).toBeGreaterThanOrEqual(0.9);
  });

  it("knows the end no better than its newest reading where that one, by chance, is the lowest of a week", () => {
    // Daily readings good to one line (JCGM 100:2008, 4.3.7: half width 0.001), a week of them after the end.
    const days = Array.from({ length: 13 }, (_, day) => day);
    const errors = fc.array(fc.noBias(fc.integer({ min: -1000, max: 1000 })).map((millionths) => millionths / 1e6), { minLength: days.length, maxLength: days.length });
    let inside = 0;
    let all = 0;
    fc.assert(
      fc.property(errors, (misread) => {
        const readings = logOf(ale, days, misread);
        const fit = refusal(() => fitFermentation(readings)) === "an answer" ? fitFermentation(readings) : undefined;
        if (fit?.ends !== "fitted") return;
        const { finalGravity, finalGravityPlusOrMinus = 0 } = forecastOf(fit, 12);
        all += 1;
        if (Math.abs(finalGravity - 1.01) <= finalGravityPlusOrMinus) inside += 1;
      }),
      { seed: 7, numRuns: 400 },
    );
    if (!allDrawn) return;
    expect(all).toBeGreaterThan(300);
    expect(inside / all).toBeGreaterThanOrEqual(0.95);
  });

  it("begins at the original gravity where that is known, however late the readings begin", () => {
    // Without it a wort of 1.025 that waits for three days would fit as well.
    const late = [[3, 1.025], [6, 1.012], [8, 1.0115], [9, 1.0115], [10, 1.0115]].map(([day = 0, gravity = 0]) => ({ day, gravity }));
    const { curve, ends } = fitFermentation(late, 1.051);
    expect(ends).toBe("fitted");
    expect(curve.upperGravity).toBe(1.051);
    expect(gravityOnDay(curve, 0)).toBeGreaterThan(1.04);
  });

  it("holds the ends with fewer than five readings, and wants to know the lower one", () => {
    const few = logOf(ale, [1, 2, 3]);
    const fit = fitFermentation(few, 1.05, 1.01);
    expect(fit.ends).toBe("held");
    expect([fit.curve.upperGravity, fit.curve.lowerGravity]).toEqual([1.05, 1.01]);
    expect(fit.curve.steepnessPerDay).toBeCloseTo(1.6, 4);
    expect(forecastOf(fit, 3).finalGravityPlusOrMinus).toBeUndefined();
    expect(refusal(() => fitFermentation(few, 1.05))).toBe("uncovered: too early to tell: with fewer than five readings the expected gravity must be given");
  });

  it("says that it cannot tell yet", () => {
    expect(refusal(() => fitFermentation(logOf(ale, [2])))).toContain("uncovered: too early to tell: at least two readings");
    expect(refusal(() => fitFermentation(logOf(ale, [0, 0.2, 0.4, 0.5, 0.6]), 1.05))).toMatch(/too early to tell: gravity has fallen by 0\.00\d, and a curve needs 0\.005 or more/);
    expect(refusal(() => fitFermentation(logOf(ale, [0, 0.6, 0.9, 1.1, 1.3]), 1.05))).toContain("do not show yet where the curve will end");
    expect(refusal(() => fitFermentation([{ day: 0, gravity: 1.05 }, { day: 3, gravity: 1.03 }], 1.05, 1.01))).toContain("two readings on the way down");
  });

  it("falls back on the expected gravity where five readings do not show the end", () => {
    const fit = fitFermentation(logOf(ale, [0, 0.6, 0.9, 1.1, 1.3]), 1.05, 1.01);
    expect(fit.ends).toBe("held");
    expect(fit.curve.middleDay).toBeCloseTo(2.2, 2);
  });

  it("does not call a beer finished where it stands, when it has fallen past the gravity expected and goes on falling", () => {
    const past = [{ day: 0, gravity: 1.05 }, { day: 1, gravity: 1.04 }, { day: 2, gravity: 1.02 }, { day: 3, gravity: 1.01 }];
    expect(refusal(() => fitFermentation(past, undefined, 1.015))).toBe("uncovered: too early to tell: the newest reading is below the gravity expected, and it still falls; wait until two readings a day apart agree");
    // Where it stands still below what was expected, it has ended there.
    expect(fitFermentation([...past, { day: 4, gravity: 1.01 }].slice(1), 1.05, 1.015).curve.lowerGravity).toBe(1.01);
  });

  it("refuses a log that rises", () => {
    expect(refusal(() => fitFermentation(logOf(ale, [0, 2, 3, 4, 5], [0, 0, 0, 0, 0.006])))).toMatch(/^impossible: .*above an earlier one/);
  });

  it("wants two readings that stand 0.0015 or more clear of both ends, however many there are", () => {
    const held = (...gravities: number[]) => refusal(() => fitFermentation(gravities.map((gravity, day) => ({ day, gravity })), 1.05, 1.01));
    const refused = "uncovered: too early to tell: at least two readings on the way down, between the original and the final gravity, are needed";
    expect(held(1.0486, 1.03)).toBe(refused);
    expect(held(1.0484, 1.03)).toBe("an answer");
    expect(held(1.03, 1.01149)).toBe(refused);
    expect(held(1.03, 1.0116)).toBe("an answer");
    expect(held(1.05, 1.0495, 1.0486, 1.03)).toBe(refused);
  });

  it("does not trust four readings to show the ends, even if they lie on a curve", () => {
    expect(refusal(() => fitFermentation(logOf(ale, [0, 2, 3, 8])))).toContain("with fewer than five readings the expected gravity must be given");
  });

  it("ends where a few readings stand still", () => {
    const { ends, curve } = fitFermentation([[0, 1.05], [2, 1.035], [3, 1.02], [6, 1.01], [7, 1.01]].slice(1).map(([day = 0, gravity = 0]) => ({ day, gravity })), 1.05);
    expect(ends).toBe("held");
    expect(curve.lowerGravity).toBe(1.01);
  });

  it("begins at a reading that stands above the original gravity given, and no higher than that gravity else", () => {
    const days = [0, 1, 2, 3, 4, 6, 9];
    const above = fitFermentation(logOf({ ...ale, middleDay: 4 }, days), 1.045);
    expect(above.curve.upperGravity).toBeGreaterThanOrEqual(gravityOnDay({ ...ale, middleDay: 4 }, 0));
    const late = fitFermentation(logOf({ ...ale, upperGravity: 1.056 }, [1.5, 2, 2.5, 3, 4, 6, 9]), 1.05);
    expect(late.ends).toBe("fitted");
    expect(late.curve.upperGravity).toBe(1.05);
  });

  it("ends no lower than a wort can, but follows readings that do", () => {
    const held = fitFermentation(logOf(ale, [1, 2, 3]), 1.05, 0.982);
    expect(held.curve.lowerGravity).toBe(lowestPossibleGravity(1.05));
    const dry = { upperGravity: 1.03, lowerGravity: 0.988, steepnessPerDay: 1.6, middleDay: 2.2 };
    expect(lowestPossibleGravity(1.03)).toBeGreaterThan(0.9885);
    expect(fitFermentation(logOf(dry, [0, 1, 2, 3, 4, 6, 9]), 1.03).curve.lowerGravity).toBeLessThanOrEqual(gravityOnDay(dry, 9));
    expect(() => fitFermentation(logOf(dry, [1, 2, 3, 6]), 1.03, 0.99)).toThrow("the newest reading is below the gravity expected");
  });

  it("never fits worse than the curve that the readings were made from", () => {
    const short = fc.integer({ min: -10, max: 0 }).map((tenths) => tenths / 1e4);
    const day = fc.integer({ min: 0, max: 48 }).map((quarters) => quarters / 4);
    const tenths = (min: number, max: number) => fc.integer({ min: 10 * min, max: 10 * max }).map((value) => value / 10);
    let fitted = 0;
    fc.assert(
      fc.property(fc.array(short, { minLength: 8, maxLength: 8 }), fc.array(day, { minLength: 8, maxLength: 8 }), tenths(0.6, 6), tenths(1, 9), (errors, days, steepnessPerDay, middleDay) => {
        const made = { ...ale, steepnessPerDay, middleDay };
        // The newest reading is exact, so that the curve's own end is one that the fit may choose.
        const readings = logOf(made, [...days].sort((one, other) => one - other), [...errors.slice(1), 0]);
        const squares = (curve: FermentationCurve) => readings.reduce((sum, { day: at, gravity }) => sum + (gravity - gravityOnDay(curve, at)) ** 2, 0);
        const shown = refusal(() => {
          const fit = fitFermentation(readings);
          if (fit.ends !== "fitted") return;
          fitted += 1;
          expect(squares(fit.curve)).toBeLessThanOrEqual(squares(made) * (1 + 1e-6) + 1e-12);
        });
        expect(shown).toMatch(/^(an answer|uncovered: |impossible: )/);
      }),
      { seed: 11, numRuns: 200 },
    );
    if (allDrawn) expect(fitted).toBeGreaterThan(50);
  });

  it("goes on level from a stall, however many readings there are", () => {
    const stuck = [...logOf({ ...ale, lowerGravity: 1.022 }, [0, 1, 2, 3, 5]), { day: 7, gravity: 1.022 }, { day: 8, gravity: 1.022 }];
    for (const readings of [stuck, stuck.slice(2)]) {
      const fit = fitFermentation(readings, 1.05, 1.012);
      expect(fit.curve.lowerGravity).toBe(1.022);
      expect(bandOnDay(fit, 30).gravity).toBeCloseTo(1.022, 6);
    }
  });

  const anyLog = fc.array(fc.tuple(fc.integer({ min: 0, max: 48 }).map((quarter) => quarter / 4), fc.integer({ min: 995, max: 1090 }).map((points) => points / 1000)), { minLength: 2, maxLength: 9 });

  it("never forecasts an end above the newest reading, or below what can be; whatever the order of the rows", () => {
    let answered = 0;
    fc.assert(
      fc.property(anyLog, fc.boolean(), fc.option(fc.constant(1.01), { nil: undefined }), (rows, sorted, expected) => {
        // Most made-up logs rise, and are refused; sorted ones look like a fermentation.
        const gravities = rows.map(([, gravity]) => gravity);
        if (sorted) gravities.sort((one, other) => other - one);
        const days = rows.map(([day]) => day);
        if (sorted) days.sort((one, other) => one - other);
        const readings = readingsInOrder(days, gravities);
        const shown = refusal(() => {
          const fit = fitFermentation(readings, undefined, expected);
          const { finalGravity, day } = forecastOf(fit, readings.at(-1)?.day ?? 0);
          expect(finalGravity).toBeLessThanOrEqual(readings.at(-1)?.gravity ?? 0);
          expect(finalGravity).toBeGreaterThanOrEqual(Math.min(lowestPossibleGravity(fit.curve.upperGravity), readings.at(-1)?.gravity ?? 0));
          expect(Number.isFinite(day)).toBe(true);
          const turned = fitFermentation(readingsInOrder([...days].reverse(), [...gravities].reverse()), undefined, expected);
          expect(turned.curve).toEqual(fit.curve);
          answered += 1;
        });
        expect(shown).toMatch(/^(an answer|uncovered: |impossible: )/);
      }),
      { seed: 3, numRuns: 300 },
    );
    if (allDrawn) expect(answered).toBeGreaterThan(40);
  });
});

it("asCurve and the list agree", () => {
  expect(asCurve([1.05, 1.01, 1.6, 2.2])).toEqual(ale);
});
