import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { massesForGravity, type BillShare } from "../../../src/core/wort/bill";
import { expectedGravity } from "../../../src/core/wort/expected-gravity";

const handling = fc.constantFrom("mash" as const, "steep" as const, "extract" as const, "sugar" as const);
const row = fc.record({
  share: fc.double({ min: 0.1, max: 100, noNaN: true }),
  yieldPercent: fc.double({ min: 50, max: 100, noNaN: true }),
  handling,
});
const bill = fc.array(row, { minLength: 1, maxLength: 6 });

describe("massesForGravity", () => {
  it("is the gravity of that bill turned round, and keeps the shares", () => {
    fc.assert(
      fc.property(
        bill,
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 1.02, max: 1.19, noNaN: true }),
        fc.double({ min: 40, max: 95, noNaN: true }),
        (shares, volume, target, efficiency) => {
          const masses = massesForGravity(shares, volume, target, efficiency);
          const made = shares.map((share, index) => ({ ...share, massKg: masses[index] ?? 0 }));
          expect(expectedGravity(made, volume, efficiency)).toBeCloseTo(target, 9);
          const [first, last] = [masses[0] ?? 0, masses.at(-1) ?? 0];
          expect(first * (shares.at(-1)?.share ?? 0)).toBeCloseTo(last * (shares[0]?.share ?? 0), 6);
        },
      ),
    );
  });

  /** NBS Circular 440, Table 114: gravity and °Bx. Sugar in the wort = mass of the wort × °Bx, without any density of ours. */
  it.each([
    [1.02, 5.081],
    [1.04003, 10],
    [1.04837, 12],
    [1.08297, 20],
  ])("weighs in the sugar that a wort of %f holds", (target, brix) => {
    const shares: BillShare[] = [
      { share: 8, yieldPercent: 80, handling: "mash" },
      { share: 1, yieldPercent: 100, handling: "sugar" },
    ];
    const [malt = 0, sugar = 0] = massesForGravity(shares, 20, target, 72);
    expect(malt * 0.8 * 0.72 + sugar).toBeCloseTo((20 * target * 0.9982 * brix) / 100, 2);
  });
});
