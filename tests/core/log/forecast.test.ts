import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { realExtractByBalling } from "../../../src/core/beer/alcohol";
import { BrewingError } from "../../../src/core/brewing-error";
import { condensed } from "../../../src/core/log/condensed";
import { bandOnDay, fitFermentation } from "../../../src/core/log/fit";
import { forecastOf } from "../../../src/core/log/forecast";
import { lowestPossibleGravity } from "../../../src/core/log/possible";
import { readingsInOrder, type Reading } from "../../../src/core/log/readings";
import { gravityOnDay } from "../../../src/core/log/richards";
import type { KnownOfBeer } from "../../../src/core/log/steady";
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

const known: KnownOfBeer = { originalGravity: 1.05, expectedGravity: 1.01 };
const forecast = (readings: readonly Reading[], beer: KnownOfBeer = known) =>
  forecastOf(fitFermentation(readings, beer), readings[0]?.day ?? 0);
const log = (...rows: readonly (readonly [number, number])[]): Reading[] => rows.map(([day, gravity]) => ({ day, gravity }));

describe("the lowest gravity that can be", () => {
  it("leaves no real extract, or stops where the sugar table ends", () => {
    for (const original of [1.03, 1.05, 1.08]) {
      expect(realExtractByBalling(platoFromGravity(original), platoFromGravity(lowestPossibleGravity(original)))).toBeCloseTo(0, 9);
    }
    expect(lowestPossibleGravity(1.2)).toBe(0.98);
    expect(lowestPossibleGravity(0.99)).toBe(1);
  });
});

describe("fitFermentation", () => {
  it("comes near a known curve from exact readings, and the nearer the more there are", () => {
    const away = (days: readonly number[]) => {
      const { curve } = fitFermentation(logOf(ale, days), known);
      return Math.max(...[0, 1, 2, 3, 4, 5].map((day) => Math.abs(gravityOnDay(curve, day) - gravityOnDay(ale, day))));
    };
    expect(away([0, 1, 2, 3, 4, 6, 9])).toBeLessThan(0.0007);
    expect(away(Array.from({ length: 20 }, (_, index) => 0.4 * index))).toBeLessThan(away([0, 1, 2, 3, 4, 6, 9]));
  });

  it("finds it with dates as well as with days", () => {
    const dated = fitFermentation(logOf({ ...ale, halfDay: 46002.2 }, [46000, 46001, 46002, 46003, 46004, 46006]), known).curve;
    const days = fitFermentation(logOf(ale, [0, 1, 2, 3, 4, 6]), known).curve;
    expect(dated.halfDay - 46000).toBeCloseTo(days.halfDay, 5);
    expect(dated.lowerGravity).toBeCloseTo(days.lowerGravity, 8);
  });

  it("goes by the expected gravity at first, and by the readings in the end", () => {
    const ends = (share: number) => {
      const readings = logOf(
        ale,
        Array.from({ length: Math.round(share * 12) }, (_, index) => 0.5 * index),
      );
      return ([1.006, 1.014] as const).map(
        (expectedGravity) => fitFermentation(readings, { originalGravity: 1.05, expectedGravity }).curve.lowerGravity,
      );
    };
    const [lowEarly = 0, highEarly = 0] = ends(0.5);
    const [lowLate = 0, highLate = 0] = ends(1);
    expect(highEarly - lowEarly).toBeGreaterThan(0.005);
    expect(highLate - lowLate).toBeLessThan(0.003);
    // An expectation that the beer has passed already is no floor to it.
    expect(
      forecast(log([0, 1.05], [1, 1.04], [2, 1.02], [3, 1.01]), { originalGravity: 1.05, expectedGravity: 1.015 }).finalGravity,
    ).toBeLessThan(1.01);
  });

  it("says that it cannot tell yet", () => {
    expect(refusal(() => forecast(logOf(ale, [2])))).toBe("uncovered: too early to tell: at least two readings are needed");
    expect(refusal(() => forecast(log([0, 1.05], [0.2, 1.049], [0.4, 1.048])))).toBe(
      "uncovered: too early to tell: gravity has fallen by 0.002, and a curve needs 0.005 or more",
    );
    expect(refusal(() => forecast(log([0, 1.05], [1, 1.044])))).toBe(
      "uncovered: too early to tell: about a third of the way down is needed",
    );
    expect(refusal(() => forecast(logOf(ale, [0, 1, 2, 2.5]), { originalGravity: 1.05 }))).toBe(
      "uncovered: too early to tell: the readings do not show yet where the curve will end; give the expected gravity, or wait",
    );
    expect(refusal(() => forecast(log([0, 1.05], [0.5, 1.03])))).toMatch(
      /^(uncovered: too early to tell: the day of the end is known to ± \d+ days only; read again tomorrow|an answer)$/,
    );
  });

  it("counts a fall of 0.005 as enough, also where binary fractions fall a hair short of it", () => {
    expect(1.055 - 1.05).toBeLessThan(0.005);
    expect(refusal(() => fitFermentation(log([0, 1.055], [1, 1.05]), { originalGravity: 1.055 }))).toBe("an answer");
    expect(refusal(() => fitFermentation(log([0, 1.055], [1, 1.0501]), { originalGravity: 1.055 }))).toContain(
      "fallen by 0.005, and a curve needs 0.005",
    );
  });

  it("refuses a log that rises", () => {
    expect(refusal(() => fitFermentation(logOf(ale, [0, 2, 3, 4, 5], [0, 0, 0, 0, 0.006]), known))).toMatch(
      /^impossible: .*above an earlier one/,
    );
  });

  it("begins no lower than a reading stands, and ends no lower than a wort can, but follows readings that do", () => {
    expect(
      fitFermentation(logOf({ ...ale, halfDay: 4 }, [0, 1, 2, 3, 4, 6, 9]), { originalGravity: 1.045 }).curve.upperGravity,
    ).toBeGreaterThan(1.048);
    expect(
      fitFermentation(logOf(ale, [1, 2, 3]), { originalGravity: 1.05, expectedGravity: 0.982 }).curve.lowerGravity,
    ).toBeGreaterThanOrEqual(lowestPossibleGravity(1.05));
    const dry = { ...ale, upperGravity: 1.03, lowerGravity: 0.988 };
    expect(lowestPossibleGravity(1.03)).toBeGreaterThan(0.9885);
    expect(fitFermentation(logOf(dry, [0, 1, 2, 3, 4, 6, 9]), { originalGravity: 1.03 }).curve.lowerGravity).toBeLessThanOrEqual(
      gravityOnDay(dry, 9),
    );
  });

  it("goes on level from a stall, however many readings there are", () => {
    const stuck = [...logOf({ ...ale, lowerGravity: 1.022 }, [0, 1, 2, 3, 5]), { day: 7, gravity: 1.022 }, { day: 8, gravity: 1.022 }];
    for (const readings of [stuck, stuck.slice(2)]) {
      const fit = fitFermentation(readings, { originalGravity: 1.05, expectedGravity: 1.012 });
      expect(bandOnDay(fit, 30).gravity).toBeCloseTo(1.022, 6);
    }
  });

  it("takes a dense log by quarters of a day, and changes little by it", () => {
    const days = Array.from({ length: 4 * 96 }, (_, index) => index / 96);
    const dense = logOf(ale, days);
    expect(condensed(dense)).toHaveLength(16);
    expect(condensed(dense).reduce((sum, { readings }) => sum + readings, 0)).toBe(dense.length);
    expect(condensed(dense.slice(0, 24))).toHaveLength(24);
    expect(
      Math.abs(
        forecast(dense).day -
          forecast(
            logOf(
              ale,
              days.filter((_, index) => index % 48 === 0),
            ),
          ).day,
      ),
    ).toBeLessThan(0.5);
  });
});

describe("a forecast", () => {
  it("never names a day before the newest reading, and one that is nearer the less is to go", () => {
    // The log: 2.4 points fell on the last day, and the day named lay before it.
    const seen = log([0, 1.05], [1, 1.0467], [2, 1.0382], [3, 1.0275], [4, 1.0201], [5, 1.0158], [6, 1.0134]);
    expect(forecast(seen).day).toBeGreaterThan(7);
    const togo = [2.5, 3, 3.5, 4].map((until) => {
      const readings = logOf(
        ale,
        Array.from({ length: Math.round(until * 2) + 1 }, (_, index) => index / 2),
      );
      const { day, dayPlusOrMinus } = forecast(readings);
      expect(day - dayPlusOrMinus).toBeGreaterThanOrEqual(until - 1e-9);
      return day - until;
    });
    expect([...togo].sort((one, other) => other - one)).toEqual(togo);
  });

  it("tells held from fitted by who knows the end better", () => {
    expect(forecast(logOf(ale, [0, 1, 2, 2.5, 3])).byReadings).toBe(false);
    // The last two still differ by more than a line.
    expect(
      forecast(logOf(ale, [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.4]), { originalGravity: 1.05, expectedGravity: 1.011 })
        .finalGravityPlusOrMinus,
    ).toBeLessThan(0.003);
  });

  const anyLog = fc.array(
    fc.tuple(
      fc.integer({ min: 0, max: 48 }).map((quarter) => quarter / 4),
      fc.integer({ min: 995, max: 1090 }).map((points) => points / 1000),
    ),
    { minLength: 2, maxLength: 9 },
  );

  it("lies at or below the newest reading, not below what can be, and not in the past; whatever the order of the rows", () => {
    let answered = 0;
    fc.assert(
      fc.property(anyLog, fc.boolean(), fc.option(fc.constant(1.01), { nil: undefined }), (rows, sorted, expectedGravity) => {
        // Most made-up logs rise, and are refused; sorted ones look like a fermentation.
        const gravities = rows.map(([, gravity]) => gravity);
        if (sorted) gravities.sort((one, other) => other - one);
        const days = rows.map(([day]) => day);
        if (sorted) days.sort((one, other) => one - other);
        const readings = readingsInOrder(days, gravities);
        const newest = readings.at(-1) ?? { day: 0, gravity: 1 };
        const shown = refusal(() => {
          const fit = fitFermentation(readings, { expectedGravity });
          const { finalGravity, finalGravityPlusOrMinus, day, dayPlusOrMinus } = forecastOf(fit, readings[0]?.day ?? 0);
          expect(finalGravity).toBeLessThanOrEqual(newest.gravity);
          expect(finalGravity).toBeGreaterThanOrEqual(Math.min(lowestPossibleGravity(fit.curve.upperGravity) - 0.001, newest.gravity));
          expect(day).toBeGreaterThanOrEqual(newest.day);
          expect(dayPlusOrMinus).toBeGreaterThanOrEqual(0);
          expect(finalGravityPlusOrMinus).toBeGreaterThan(0);
          const turned = fitFermentation(readingsInOrder([...days].reverse(), [...gravities].reverse()), { expectedGravity });
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
