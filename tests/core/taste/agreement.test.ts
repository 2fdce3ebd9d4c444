import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { uniformDraws } from "../../../src/core/math/normal-draws";
import { chiSquaredAbove } from "../../../src/core/math/chi-squared";
import { agreement, leastDifference } from "../../../src/core/taste/agreement";

/**
 * Critical values of Friedman's test at 5 %, by beers and tasters, as printed (three places; "Critical values for the Friedman
 * Test", k = 3 and 4, after M. Friedman's own tables).
 */
const critical: Readonly<Record<number, Readonly<Record<number, number>>>> = {
  3: { 3: 6, 4: 6.5, 5: 6.4, 6: 7, 7: 7.143, 8: 6.25, 9: 6.222, 10: 6.2, 11: 6.545, 12: 6.5, 13: 6.615, 14: 6.143, 15: 6.4 },
  4: { 2: 6, 3: 7.4, 4: 7.8, 5: 7.8, 6: 7.6, 7: 7.8, 8: 7.65 },
  5: { 3: 8.533, 4: 8.8 },
};

const next = uniformDraws();
const shuffled = (beers: number): number[] => {
  const row = Array.from({ length: beers }, (_, beer) => beer + 1);
  for (let last = beers - 1; last > 0; last--) {
    const other = Math.floor(next() * (last + 1));
    [row[last], row[other]] = [row[other] ?? 0, row[last] ?? 0];
  }
  return row;
};

describe("agreement of tasters", () => {
  it.each(
    Object.entries(critical).flatMap(([beers, row]) =>
      Object.entries(row).map(([tasters, value]) => [Number(beers), Number(tasters), value]),
    ),
  )("of %i beers and %i tasters is shown from a statistic of %f on", (beers, tasters, value) => {
    const seen = { above: 0, below: 0 };
    for (let draw = 0; draw < 40; draw++) {
      // Some tables of chance, some of tasters who nearly all agree.
      const scores = Array.from({ length: tasters }, (_, taster) =>
        (draw % 2 === 0 && taster % 4 < 3) || taster === 0 ? Array.from({ length: beers }, (_, beer) => beer + 1) : shuffled(beers),
      );
      const { statistic, byChance, isCounted } = agreement(scores);
      expect(isCounted).toBe(true);
      const isShown = statistic >= value - 0.0006;
      expect(byChance <= 0.05, `${statistic}: ${byChance}`).toBe(isShown);
      seen[isShown ? "above" : "below"] += 1;
    }
    expect(Math.min(seen.above, seen.below)).toBeGreaterThan(0);
  });

  it("does not depend on the order of beers or tasters, nor on how widely somebody scores", () => {
    const table = fc
      .integer({ min: 2, max: 4 })
      .chain((beers) =>
        fc.array(fc.array(fc.integer({ min: 1, max: 5 }), { minLength: beers, maxLength: beers }), { minLength: 1, maxLength: 7 }),
      );
    fc.assert(
      fc.property(table, fc.nat({ max: 6 }), (scores, turn) => {
        const plain = agreement(scores);
        const turned = agreement(scores.map((row) => [...row.slice(1), row[0] ?? 0]));
        expect(turned.statistic).toBeCloseTo(plain.statistic, 9);
        expect(turned.byChance).toBeCloseTo(plain.byChance, 12);
        expect(turned.rankSums.at(-1)).toBe(plain.rankSums[0]);
        expect(agreement([...scores].reverse()).byChance).toBeCloseTo(plain.byChance, 12);
        const wider = scores.map((row, taster) => (taster === turn % scores.length ? row.map((score) => 10 * score ** 2) : row));
        expect(agreement(wider)).toEqual(plain);
      }),
    );
  });

  it("ranks by places: a beer that somebody scores higher never does worse", () => {
    const table = fc
      .integer({ min: 2, max: 5 })
      .chain((beers) =>
        fc.array(fc.array(fc.integer({ min: 1, max: 5 }), { minLength: beers, maxLength: beers }), { minLength: 1, maxLength: 5 }),
      );
    fc.assert(
      fc.property(table, fc.nat(), fc.nat(), (scores, someTaster, someBeer) => {
        const [taster, beer] = [someTaster % scores.length, someBeer % (scores[0]?.length ?? 1)];
        const raised = scores.map((row, at) => (at === taster ? row.map((score, place) => (place === beer ? score + 1 : score)) : row));
        const [before, after] = [agreement(scores).rankSums, agreement(raised).rankSums];
        expect(after[beer]).toBeLessThanOrEqual(before[beer] ?? 0);
        for (const [other, sum] of after.entries()) if (other !== beer) expect(sum).toBeGreaterThanOrEqual(before[other] ?? 0);
        // Places are only handed round.
        const all = (sums: readonly number[]): number => sums.reduce((sum, one) => sum + one, 0);
        expect(all(after)).toBeCloseTo((scores.length * (scores[0]?.length ?? 0) * ((scores[0]?.length ?? 0) + 1)) / 2, 9);
      }),
    );
  });

  it("is nought where everybody gives every beer the same", () => {
    const { statistic, byChance, concordance } = agreement([3, 3, 3].map((score) => [score, score, score]));
    expect([statistic, concordance]).toEqual([0, 0]);
    expect(byChance).toBeCloseTo(1, 12);
  });

  it("of two tasters never shows three beers to differ", () => {
    expect(agreement([1, 2].map(() => [3, 2, 1])).tooFew).toBe(true);
    expect(agreement([1, 2, 3].map(() => [3, 2, 1])).tooFew).toBe(false);
  });

  it("calls a difference least that is 1.96 standard deviations of what chance makes of two rank sums", () => {
    // Of one taster's places for two of four beers, all equally likely: the variance of their difference, listed.
    const differences = [1, 2, 3, 4].flatMap((one) => [1, 2, 3, 4].filter((other) => other !== one).map((other) => (one - other) ** 2));
    const variance = differences.reduce((sum, one) => sum + one, 0) / differences.length;
    expect(leastDifference(9, 4)).toBeCloseTo(1.96 * Math.sqrt(9 * variance), 12);
  });
});

describe("chi-squared", () => {
  // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, table 26.8: upper 5 and 0.1 % points.
  it.each([
    [1, 3.841, 10.828],
    [2, 5.991, 13.816],
    [3, 7.815, 16.266],
    [4, 9.488, 18.467],
    [5, 11.07, 20.515],
    [9, 16.919, 27.877],
    [20, 31.41, 45.315],
  ])("with %i degrees of freedom has its printed points", (freedom, five, thousandth) => {
    expect(chiSquaredAbove(five, freedom)).toBeCloseTo(0.05, 4);
    expect(chiSquaredAbove(thousandth, freedom)).toBeCloseTo(0.001, 6);
  });

  it("begins at 1, never rises, and ends at 0 without trouble", () => {
    for (const freedom of [1, 2, 5, 8, 39]) {
      expect(chiSquaredAbove(0, freedom)).toBe(1);
      let last = 1;
      for (let value = 0; value < 1500; value += 7) {
        const now = chiSquaredAbove(value, freedom);
        expect(now).toBeLessThanOrEqual(last + 1e-13);
        expect(now).toBeGreaterThanOrEqual(0);
        last = now;
      }
      expect(last).toBeLessThan(1e-12);
    }
  });
});
