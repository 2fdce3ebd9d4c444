import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { learned } from "../../../src/core/kit/shrink";

const typical = { value: 70, betweenKits: 8, betweenBatches: 4 };

describe("a figure of the kit, learned from its batches", () => {
  it("is the typical one while there is no batch, with the spread between kits", () => {
    // 97.5 % point of the standard normal distribution, 1.959964 (NIST/SEMATECH e-Handbook, table of the normal distribution).
    expect(learned([], typical)).toEqual({ value: 70, plusMinus: 1.959964 * 8, batches: 0 });
  });

  it("is the precision-weighted mean of the textbook (Gelman et al., sec. 2.5), worked by hand for one batch", () => {
    // Precisions 1/64 and 1/16: weights 0.2 and 0.8; variance 1/(1/64 + 1/16) = 12.8.
    const { value, plusMinus } = learned([80], typical);
    expect(value).toBeCloseTo(0.2 * 70 + 0.8 * 80, 12);
    expect(plusMinus).toBeCloseTo(1.959964 * Math.sqrt(12.8), 12);
  });

  it("lets the batches' own scatter take over from the assumed one, worked by hand for two", () => {
    // Variance (4·16 + 2·25)/5 = 22.8; precisions 1/64 and 2/22.8.
    const [prior, data] = [1 / 64, 2 / 22.8];
    expect(learned([75, 85], typical).value).toBeCloseTo((prior * 70 + data * 80) / (prior + data), 12);
  });

  it("lies between the typical value and the batches' mean, is surer with every batch that agrees, and ends at their mean", () => {
    const values = fc.array(fc.double({ min: 40, max: 95, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(values, (found) => {
        const mean = found.reduce((sum, value) => sum + value, 0) / found.length;
        const { value } = learned(found, typical);
        expect(value).toBeGreaterThanOrEqual(Math.min(70, mean) - 1e-9);
        expect(value).toBeLessThanOrEqual(Math.max(70, mean) + 1e-9);
        expect(learned([...found, mean], typical).plusMinus).toBeLessThan(learned(found, typical).plusMinus);
      }),
    );
    expect(
      learned(
        Array.from({ length: 10_000 }, () => 80),
        typical,
      ).value,
    ).toBeCloseTo(80, 2);
  });
});
