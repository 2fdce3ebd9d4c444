import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blindCodes, byChance, servingOrders, type Draw } from "../../../src/workbook/sheets/club/blind-codes";

/** Draws from a seed, so that a failure can be repeated. */
const seeded = (seed: number): Draw => {
  let state = (seed % 2147483646) + 1;
  return (below) => {
    state = (state * 16807) % 2147483647;
    return Math.floor((state / 2147483647) * below);
  };
};

describe("blind codes", () => {
  it("have three different digits without 0, count neither up nor down, and no two are a slip of the pen apart", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 40 }), fc.nat(), (count, seed) => {
        const codes = blindCodes(count, seeded(seed)).map(String);
        expect(codes).toHaveLength(count);
        for (const code of codes) {
          expect(code).toMatch(/^[1-9]{3}$/);
          expect(new Set(code).size).toBe(3);
          expect("123456789 987654321").not.toContain(code);
        }
        for (const [index, one] of codes.entries())
          for (const other of codes.slice(0, index))
            expect([...one].filter((digit, place) => digit !== other[place]).length).toBeGreaterThan(1);
      }),
    );
  });

  it("tell nothing about the place of a beer on the list: every first digit comes as often in every place", () => {
    const draw = seeded(11);
    const counts = [0, 1, 2, 3].map(() => Array.from({ length: 10 }, () => 0));
    const tastings = 4000;
    for (let at = 0; at < tastings; at += 1)
      blindCodes(4, draw).forEach((code, place) => {
        const digit = Math.floor(code / 100);
        counts[place]![digit] = (counts[place]![digit] ?? 0) + 1;
      });
    for (const ofPlace of counts) {
      // Chi-squared with eight degrees of freedom is above 26.1 once in a thousand (Abramowitz and Stegun, table 26.8). As many codes begin with
      // each digit, but for two at most of those that count up or down.
      const expected = tastings / 9;
      const statistic = ofPlace.slice(1).reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
      expect(statistic).toBeLessThan(35);
    }
  });

  it("are drawn anew each time, by chance that covers its whole range", () => {
    const seen = new Set(Array.from({ length: 2000 }, () => byChance(7)));
    expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(blindCodes(12, byChance)).not.toEqual(blindCodes(12, byChance));
  });
});

describe("serving orders", () => {
  it("hold every beer once for every taster", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 1, max: 40 }), fc.nat(), (beers, tasters, seed) => {
        const orders = servingOrders(beers, tasters, seeded(seed));
        expect(orders).toHaveLength(tasters);
        for (const order of orders)
          expect([...order].sort((one, other) => one - other)).toEqual(Array.from({ length: beers }, (_, beer) => beer));
      }),
    );
  });

  it("are balanced: as often in each place, and as often behind each other beer", () => {
    for (let beers = 2; beers <= 12; beers += 1) {
      const tasters = beers % 2 === 0 ? beers : 2 * beers;
      const orders = servingOrders(beers, tasters, seeded(beers));
      for (let place = 0; place < beers; place += 1)
        for (let beer = 0; beer < beers; beer += 1) expect(orders.filter((order) => order[place] === beer)).toHaveLength(tasters / beers);
      const behind = new Map<string, number>();
      for (const order of orders)
        for (let place = 1; place < beers; place += 1) {
          const pair = `${order[place - 1]} ${order[place]}`;
          behind.set(pair, (behind.get(pair) ?? 0) + 1);
        }
      expect(behind.size, `${beers} beers`).toBe(beers * (beers - 1));
      expect(new Set(behind.values()).size, `${beers} beers`).toBe(1);
    }
  });
});
