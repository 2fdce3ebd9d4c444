import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nonNegativeLeastSquares } from "../../../src/core/math/non-negative";

const entry = fc.integer({ min: -9, max: 9 });
const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, row) => sum + value * (other[row] ?? 0), 0);
const restOf = (columns: readonly (readonly number[])[], wanted: readonly number[], amounts: readonly number[]): number[] =>
  wanted.map((value, row) => value - columns.reduce((sum, column, index) => sum + (column[row] ?? 0) * (amounts[index] ?? 0), 0));

describe("nonNegativeLeastSquares", () => {
  it("meets what makes it the nearest (Karush, Kuhn and Tucker): none below 0, what is used cannot help more, what is not cannot help", () => {
    let bounded = 0;
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 9 })
          .chain((count) => fc.array(fc.array(entry, { minLength: 6, maxLength: 6 }), { minLength: count, maxLength: count })),
        fc.array(entry, { minLength: 6, maxLength: 6 }),
        (columns, wanted) => {
          const amounts = nonNegativeLeastSquares(columns, wanted);
          const rest = restOf(columns, wanted, amounts);
          if (amounts.some((amount) => amount === 0)) bounded += 1;
          columns.forEach((column, index) => {
            const [amount, help] = [amounts[index] ?? -1, dot(column, rest)];
            expect(amount).toBeGreaterThanOrEqual(0);
            expect(help).toBeLessThan(1e-3);
            if (amount > 1e-6) expect(Math.abs(help)).toBeLessThan(1e-3);
          });
        },
      ),
      { numRuns: 400 },
    );
    expect(bounded).toBeGreaterThan(10);
  });

  it("takes one of two columns that say the same, none for nothing, and none of a column of noughts", () => {
    const amounts = nonNegativeLeastSquares(
      [
        [1, 2, 0],
        [2, 4, 0],
        [0, 0, 0],
      ],
      [3, 6, 1],
    );
    expect((amounts[0] ?? 0) + 2 * (amounts[1] ?? 0)).toBeCloseTo(3, 9);
    expect(amounts.filter((amount) => amount > 0)).toHaveLength(1);
    expect(nonNegativeLeastSquares([], [1, 2])).toEqual([]);
    expect(nonNegativeLeastSquares([[1, 0]], [-1, 0])).toEqual([0]);
  });
});
