import fc from "fast-check";
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { describe, expect, it } from "vitest";
import { gravityOnDay, richardsModel } from "../../../src/core/log/richards";
import { leastSquares, normalEquations, type Model } from "../../../src/core/math/least-squares";
import { inverseOfPositiveDefinite } from "../../../src/core/math/linear";
import { allDrawn } from "../../support/drawn";

const line: Model = { value: ([a = 0, b = 0], x) => a + b * x, gradient: (_, x) => [1, x] };
const unbounded = { least: [-Infinity, -Infinity], most: [Infinity, Infinity] };

describe("leastSquares", () => {
  it("finds the straight line that the sums of the text books give", () => {
    const points = [
      [0, 1],
      [1, 3],
      [2, 4],
      [3, 8],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    // Worked by hand: slope (n Σxy − Σx Σy) / (n Σx² − (Σx)²) = (4 × 35 − 6 × 16) / (4 × 14 − 36) = 2.2, a = 4 − 2.2 × 1.5.
    const { parameters, sumOfSquares } = leastSquares(line, points, [0, 0], unbounded);
    expect(parameters[0]).toBeCloseTo(0.7, 6);
    expect(parameters[1]).toBeCloseTo(2.2, 6);
    expect(sumOfSquares).toBeCloseTo(1.8, 9);
  });

  it("meets the certified values of NIST's data set Rat42, a logistic curve, with its standard deviations", () => {
    // NIST Statistical Reference Datasets, nonlinear regression, Rat42 (D. A. Ratkowsky, Nonlinear Regression Modeling, 1983):
    // y = b1 / (1 + exp(b2 − b3 x)), which is ours with the shape 1, the ends 0 and b1, K = b3 / 4 and H = b2 / b3.
    const points = [
      [9, 8.93],
      [14, 10.8],
      [21, 18.59],
      [28, 22.33],
      [42, 39.35],
      [57, 56.11],
      [63, 61.73],
      [70, 64.62],
      [79, 67.08],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const { parameters, sumOfSquares } = leastSquares(richardsModel, points, [0, 100, Math.log(0.02), 40, 1], {
      least: [0, 0, -9, 0, 1],
      most: [0, 1000, 0, 200, 1],
    });
    const [, upper = 0, lnSteepness = 0, half = 0] = parameters;
    const steepness = 4 * Math.exp(lnSteepness);
    expect(upper).toBeCloseTo(72.462237576, 3);
    expect(steepness).toBeCloseTo(0.067359200066, 6);
    expect(steepness * half).toBeCloseTo(2.6180768402, 4);
    expect(sumOfSquares).toBeCloseTo(8.0565229338, 6);

    const inverse = inverseOfPositiveDefinite(normalEquations(richardsModel, parameters, points, [1, 2, 3]).matrix);
    const deviation = (place: number) => Math.sqrt(((inverse?.[place]?.[place] ?? NaN) * sumOfSquares) / 6);
    expect(deviation(0)).toBeCloseTo(1.7340283401, 3);
    expect(steepness * deviation(1)).toBeCloseTo(0.0034465663377, 6);
  });

  it("meets those of Rat43, the asymmetric curve of our family, with its shape", () => {
    // y = b1 / (1 + exp(b2 − b3 x))^(1 / b4), which is ours with the shape b4; read in programs that test themselves with it.
    const y = [16.08, 33.83, 65.8, 97.2, 191.55, 326.2, 386.87, 520.53, 590.03, 651.92, 724.93, 699.56, 689.96, 637.56, 717.41];
    const points = y.map((value, index) => ({ x: index + 1, y: value }));
    const { parameters, sumOfSquares } = leastSquares(richardsModel, points, [0, 700, Math.log(0.2), 6, 1], {
      least: [0, 0, -9, 0, -0.9],
      most: [0, 5000, 2, 30, 9],
    });
    const [, upper = 0, lnSteepness = 0, half = 0, shape = 0] = parameters;
    expect(upper).toBeCloseTo(699.6415127, 2);
    expect(shape).toBeCloseTo(1.2792483859, 3);
    const rate = (2 * Math.exp(lnSteepness) * shape) / (1 - 2 ** -shape);
    expect(rate).toBeCloseTo(0.75962938329, 4);
    // Half is done where (1 + exp(b2 − b3 H)) = 2^b4.
    expect(Math.log(2 ** shape - 1) + rate * half).toBeCloseTo(5.2771253025, 3);
    expect(sumOfSquares / 8786.404908).toBeCloseTo(1, 8);
  });

  it("weighs points, and what was known beforehand like points of the parameter", () => {
    // Worked by hand: a mean of 1 (weight 3) and 5, drawn to 9 by a belief of weight 4: (3 + 5 + 36) / 8.
    const mean: Model = { value: ([a = 0]) => a, gradient: () => [1] };
    const { parameters, sumOfSquares } = leastSquares(
      mean,
      [
        { x: 0, y: 1, weight: 3 },
        { x: 1, y: 5 },
      ],
      [0],
      { least: [-99], most: [99] },
      [{ value: 9, weight: 4 }],
    );
    expect(parameters[0]).toBeCloseTo(5.5, 6);
    expect(sumOfSquares).toBeCloseTo(3 * 4.5 ** 2 + 0.5 ** 2 + 4 * 3.5 ** 2, 6);
    expect(
      normalEquations(
        mean,
        [0],
        [
          { x: 0, y: 1, weight: 3 },
          { x: 1, y: 5 },
        ],
        [0],
        [{ value: 9, weight: 4 }],
      ),
    ).toEqual({ matrix: [[8]], slope: [44] });
  });

  it("stops at a bound and fits the rest to it", () => {
    const points = [0, 1, 2, 3].map((x) => ({ x, y: 1 + 2 * x }));
    const { parameters } = leastSquares(line, points, [0, 0], { least: [-10, -10], most: [10, 1] });
    expect(parameters[1]).toBe(1);
    expect(parameters[0]).toBeCloseTo(1 + 1.5, 6);
  });

  it("stops at a lower bound as well, holds what has equal bounds, and leaves a bound that it starts at", () => {
    const points = [0, 1, 2, 3].map((x) => ({ x, y: 1 + 2 * x }));
    // The mean of y is 4 at the mean x of 1.5: a = 4 − 1.5 b; b = (Σxy − a Σx) / Σx² = (34 − 6 a) / 14.
    const steep = leastSquares(line, points, [0, 0], { least: [-10, 3], most: [10, 10] }).parameters;
    expect([steep[0], steep[1]]).toEqual([expect.closeTo(-0.5, 6), 3]);
    const held = leastSquares(line, points, [7, 0], { least: [2, -10], most: [2, 10] }).parameters;
    expect([held[0], held[1]]).toEqual([2, expect.closeTo(22 / 14, 6)]);
    for (const [start, bounds] of [
      [[0, 0], { least: [0, 0], most: [10, 10] }],
      [[10, 10], { least: [0, 0], most: [10, 10] }],
      [[-5, 20], { least: [0, 0], most: [10, 10] }],
    ] as const) {
      const found = leastSquares(line, points, start, bounds).parameters;
      expect([found[0], found[1]]).toEqual([expect.closeTo(1, 6), expect.closeTo(2, 6)]);
    }
    expect(leastSquares(line, points, [1, 1], { least: [1, 1], most: [1, 1] })).toEqual({ parameters: [1, 1], sumOfSquares: 14 });
  });

  it("finds what the published package ml-levenberg-marquardt finds on fermentation curves, never less good", () => {
    let agreed = 0;
    const readings = fc.array(fc.double({ min: -0.0008, max: 0.0008, noNaN: true }), { minLength: 9, maxLength: 9 });
    fc.assert(
      fc.property(
        readings,
        fc.double({ min: 0.8, max: 2.5, noNaN: true }),
        fc.double({ min: 2, max: 4, noNaN: true }),
        (noise, steepness, middle) => {
          const points = noise.map((error, day) => ({
            x: day,
            y:
              gravityOnDay({ upperGravity: 1.05, lowerGravity: 1.01, steepnessPerDay: steepness / 4, halfDay: middle, shape: 1 }, day) +
              error,
          }));
          const start = [1.048, 1.012, Math.log(1.4 / 4), 3, 1];
          const least = [1, 0.98, Math.log(0.05 / 4), -5, 1];
          const most = [1.2, 1.05, Math.log(12 / 4), 20, 1];
          const ours = leastSquares(richardsModel, points, start, { least, most });
          // The package compares sums of squares with absolute figures, so it gets the readings in thousandths.
          const theirs = levenbergMarquardt(
            { x: points.map(({ x }) => x), y: points.map(({ y }) => 1000 * y) },
            ([upper = 0, lower = 0, b = 0, m = 0]) =>
              (day: number) =>
                lower + (upper - lower) / (1 + Math.exp(b * (day - m))),
            {
              initialValues: [1048, 1012, 1.4, 3],
              minValues: [1000, 980, 0.05, -5],
              maxValues: [1200, 1050, 12, 20],
              maxIterations: 500,
              errorTolerance: 1e-12,
              gradientDifference: 1e-5,
              centralDifference: true,
              damping: 1e-3,
            },
          );
          expect(1e6 * ours.sumOfSquares).toBeLessThanOrEqual(theirs.parameterError * (1 + 1e-6) + 1e-9);
          // Some of the package's searches end before the bottom; where both got there, the ends are the same.
          if (theirs.parameterError > 1e6 * ours.sumOfSquares * (1 + 1e-6) + 1e-9) return;
          agreed += 1;
          expect(Math.abs(1000 * (ours.parameters[1] ?? 0) - (theirs.parameterValues[1] ?? 0))).toBeLessThan(0.02);
        },
      ),
      { seed: 20261125, numRuns: 60 },
    );
    if (allDrawn) expect(agreed).toBeGreaterThan(40);
  });
});

describe("inverseOfPositiveDefinite", () => {
  it("gives the inverse", () => {
    const inverse = inverseOfPositiveDefinite([
      [4, 2, 0],
      [2, 5, 1],
      [0, 1, 3],
    ]);
    const product = [
      [4, 2, 0],
      [2, 5, 1],
      [0, 1, 3],
    ].map((row) => [0, 1, 2].map((column) => row.reduce((sum, entry, k) => sum + entry * (inverse?.[k]?.[column] ?? NaN), 0)));
    product.flat().forEach((entry, index) => expect(entry).toBeCloseTo(index % 4 === 0 ? 1 : 0, 12));
  });

  it("has none where two columns say the same", () => {
    expect(
      inverseOfPositiveDefinite([
        [1, 2],
        [2, 4],
      ]),
    ).toBeUndefined();
    expect(inverseOfPositiveDefinite([[0]])).toBeUndefined();
  });
});
