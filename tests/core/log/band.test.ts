import { describe, expect, it } from "vitest";
import { bandOnDay, fitFermentation, type FermentationFit } from "../../../src/core/log/fit";
import { lowestPossibleGravity } from "../../../src/core/log/possible";
import type { Reading } from "../../../src/core/log/readings";
import { asCurve, asList, gravityOnDay } from "../../../src/core/log/richards";
import { normalOf, truthFamilies, truthLog, uniformDraws } from "../../support/fermentation-truths";
import { ale, logOf } from "../../support/fermentation-log";

const known = { originalGravity: 1.05, expectedGravity: 1.01 };

describe("the band", () => {
  it("holds the curve, opens where there are no readings, and never reaches below what can be", () => {
    const fit = fitFermentation(logOf(ale, [0, 1, 2, 3, 4]), { originalGravity: 1.05 });
    for (const day of [-1e6, 0, 1, 2, 3, 4, 8, 1e6]) {
      const { gravity, low, high } = bandOnDay(fit, day);
      expect(low).toBeLessThanOrEqual(gravity);
      expect(high).toBeGreaterThan(gravity);
      expect(low).toBeGreaterThanOrEqual(lowestPossibleGravity(1.05) - 1e-3);
      expect(high).toBeLessThanOrEqual(1.05 + fit.originalPlusOrMinus + 1e-3);
    }
    const width = (day: number) => bandOnDay(fit, day).high - bandOnDay(fit, day).low;
    expect(width(8)).toBeGreaterThan(width(3.5));
  });

  it("holds a reading still to come, of fermentations that follow another law, in 9 of 10 logs", () => {
    for (const [name, family] of Object.entries(truthFamilies)) {
      const uniform = uniformDraws(41);
      let inside = 0;
      let asked = 0;
      for (let log = 0; log < 60; log += 1) {
        const { readings, originalGravity, expectedGravity } = truthLog(family, uniform, 0.6, 0.9);
        // The last reading is hidden, and must lie in the band, give or take what it is itself good to.
        const hidden = readings.at(-1)!;
        const before = readings.slice(0, -1);
        if (originalGravity - before.at(-1)!.gravity < 0.01) continue;
        asked += 1;
        const { low, high } = bandOnDay(fitFermentation(before, { originalGravity, expectedGravity }), hidden.day);
        if (hidden.gravity > low - 0.001 && hidden.gravity < high + 0.001) inside += 1;
      }
      expect(asked, name).toBeGreaterThan(30);
      expect(inside / asked, name).toBeGreaterThanOrEqual(0.9);
    }
  });
});

describe("the width of the band", () => {
  /** The solution of a set of linear equations by elimination: small, and none of the project's. */
  function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
    const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
    for (const [pivot, line] of rows.entries()) {
      for (const other of rows) {
        if (other === line) continue;
        const factor = (other[pivot] ?? 0) / (line[pivot] ?? 0);
        line.forEach((value, column) => (other[column] = (other[column] ?? 0) - factor * value));
      }
    }
    return rows.map((row, index) => (row.at(-1) ?? 0) / (row[index] ?? 0));
  }

  /** 1.96 √(g′ (J′WJ + P)⁻¹ g) on a day, with slopes by small steps and the uncertainties written out. */
  function halfWidth({ curve }: FermentationFit, readings: readonly Reading[], day: number): number {
    const slopes = (at: number) =>
      [0, 1, 2, 3, 4].map((index) => {
        const moved = (step: number) =>
          gravityOnDay(asCurve(asList(curve).map((value, own) => (own === index ? value + step : value))), at);
        return (moved(1e-5) - moved(-1e-5)) / 2e-5;
      });
    const jacobian = readings.map((reading) => slopes(reading.day));
    const weight = 1 / (0.001 ** 2 / 3 + (0.01 * 0.04) ** 2);
    const beforehand = [0.001, 0.045 * 0.05, 0.9, 10, 0.5].map((deviation) => 1 / deviation ** 2);
    const normal = beforehand.map((own, row) =>
      beforehand.map(
        (_, column) =>
          weight * jacobian.reduce((sum, line) => sum + (line[row] ?? 0) * (line[column] ?? 0), 0) + (row === column ? own : 0),
      ),
    );
    const here = slopes(day);
    return 1.959964 * Math.sqrt(solved(normal, here).reduce((sum, value, index) => sum + value * (here[index] ?? 0), 0));
  }

  it("where there are readings is that of hydrometer, expectation and curve together", () => {
    const readings = logOf(ale, [0, 1, 2, 3]);
    const fit = fitFermentation(readings, known);
    for (const day of [0.5, 1.5, 2.5]) {
      const { gravity, high } = bandOnDay(fit, day);
      expect((high - gravity) / halfWidth(fit, readings, day), `day ${day}`).toBeCloseTo(1, 2);
    }
  });

  it("grows with readings that scatter", () => {
    const uniform = uniformDraws(17);
    const days = Array.from({ length: 14 }, (_, index) => 0.4 * index);
    const noise = days.map(() => normalOf(uniform));
    const width = (deviation: number) => {
      const { low, high } = bandOnDay(
        fitFermentation(
          logOf(
            ale,
            days,
            noise.map((value) => deviation * Math.min(Math.abs(value), 1.2) * Math.sign(value)),
          ),
          known,
        ),
        2.2,
      );
      return high - low;
    };
    expect(width(0.002)).toBeGreaterThan(1.3 * width(0.0002));
  });
});
