import { describe, expect, it } from "vitest";
import { bandOnDay, fitFermentation, type FermentationFit } from "../../../src/core/log/fit";
import { asCurve, asList, gravityOnDay } from "../../../src/core/log/logistic";
import { lowestPossibleGravity } from "../../../src/core/log/possible";
import type { Reading } from "../../../src/core/log/readings";
import { ale, logOf } from "../../support/fermentation-log";

describe("the band", () => {
  it("holds the curve, opens where there are no readings, and never reaches below what can be", () => {
    const fit = fitFermentation(logOf(ale, [0, 1, 2, 3, 4]));
    for (const day of [0, 1, 2, 3, 4, 8]) {
      const { gravity, low, high } = bandOnDay(fit, day);
      expect(low).toBeLessThan(gravity);
      expect(high).toBeGreaterThan(gravity);
      expect(low).toBeGreaterThanOrEqual(lowestPossibleGravity(1.05) - 1e-3);
    }
    // Few readings beside a steep way: its slope alone would carry the band to a gravity of 10, and below 1.000.
    const steep = fitFermentation([[3, 1.025], [6, 1.012], [8, 1.0115], [9, 1.0115], [10, 1.0115]].map(([day = 0, gravity = 0]) => ({ day, gravity })));
    const ends = [steep.curve.lowerGravity - steep.plusOrMinus([0, 1, 0, 0]), steep.curve.upperGravity + steep.plusOrMinus([1, 0, 0, 0])] as const;
    for (const day of [0, 0.5, 1, 1.5, 2, 2.5, 3, 4]) {
      const { gravity, low, high } = bandOnDay(steep, day);
      expect(low).toBeGreaterThanOrEqual(ends[0] - 1e-12);
      expect(high).toBeLessThanOrEqual(ends[1] + 1e-12);
      expect(gravity).toBeGreaterThanOrEqual(low);
      expect(gravity).toBeLessThanOrEqual(high);
    }
    const width = (day: number) => bandOnDay(fit, day).high - bandOnDay(fit, day).low;
    expect(width(8)).toBeGreaterThan(width(3.5));
  });
});

it("the band never reaches below what a wort can ferment to", () => {
  const lowest = lowestPossibleGravity(1.05);
  const slow = { upperGravity: 1.05, lowerGravity: lowest, steepnessPerDay: 0.5, middleDay: 4 };
  const fit = fitFermentation(logOf(slow, [3, 4]), 1.05, lowest);
  const { gravity, low, high } = bandOnDay(fit, 14);
  expect(gravity - (high - gravity)).toBeLessThan(lowest - 5e-5);
  expect(low).toBe(lowestPossibleGravity(fit.curve.upperGravity));
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

  /** t s √(g′ (J′J)⁻¹ g) on a day, with slopes by small steps. */
  function halfWidth({ curve }: FermentationFit, readings: readonly Reading[], free: readonly number[], day: number, spread: number, student: number): number {
    const slopes = (at: number) => free.map((index) => {
      const moved = (step: number) => gravityOnDay(asCurve(asList(curve).map((value, own) => (own === index ? value + step : value))), at);
      return (moved(1e-6) - moved(-1e-6)) / 2e-6;
    });
    const jacobian = readings.map((reading) => slopes(reading.day));
    const normal = free.map((_, row) => free.map((__, column) => jacobian.reduce((sum, line) => sum + (line[row] ?? 0) * (line[column] ?? 0), 0)));
    const here = slopes(day);
    return student * spread * Math.sqrt(solved(normal, here).reduce((sum, value, index) => sum + value * (here[index] ?? 0), 0));
  }

  it("of exact readings is that of a hydrometer: 0.001/√3, taken to be known to 8 degrees of freedom (t = 2.306)", () => {
    const readings = logOf(ale, [1, 2, 3]);
    const fit = fitFermentation(readings, 1.05, 1.01);
    for (const day of [1.5, 2.5, 4]) {
      const { gravity, high } = bandOnDay(fit, day);
      expect((high - gravity) / halfWidth(fit, readings, [2, 3], day, 0.001 / Math.sqrt(3), 2.306), `day ${day}`).toBeCloseTo(1, 3);
    }
  });

  it("of readings that scatter is √(Σr²/(n − 4)), with Student's t of n − 4 (2.228 for ten)", () => {
    const days = Array.from({ length: 14 }, (_, index) => 0.5 * index);
    // The newest stands high: an end that leans on the newest reading has a ± of its own besides.
    const readings = logOf(ale, days, days.map((_, index) => (index % 2 === 0 ? -0.0009 : 0.0009)));
    const fit = fitFermentation(readings);
    expect(fit.ends).toBe("fitted");
    const squares = readings.reduce((sum, { day, gravity }) => sum + (gravity - gravityOnDay(fit.curve, day)) ** 2, 0);
    expect(Math.sqrt(squares / 10)).toBeGreaterThan(0.0009);
    for (const day of [1, 2.5, 6]) {
      const { gravity, high } = bandOnDay(fit, day);
      expect((high - gravity) / halfWidth(fit, readings, [0, 1, 2, 3], day, Math.sqrt(squares / 10), 2.228), `day ${day}`).toBeCloseTo(1, 3);
    }
  });
});
