import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { forcedChoice } from "../../../src/core/taste/forced-choice";
import { BrewingError } from "../../../src/core/brewing-error";

/** Every way in which tasters can point at glasses, of which the first is the right one: counted, not calculated. */
function shareRight(right: number, all: number, glasses: number): number {
  let like = 0;
  for (let way = 0; way < glasses ** all; way++) {
    let rest = way;
    let hits = 0;
    for (let taster = 0; taster < all; taster++) {
      if (rest % glasses === 0) hits += 1;
      rest = Math.floor(rest / glasses);
    }
    if (hits >= right) like += 1;
  }
  return like / glasses ** all;
}

describe("a test with a forced answer", () => {
  it("says how many of all ways to guess come to as many right answers", () => {
    for (const [all, glasses] of [
      [1, 3],
      [5, 3],
      [8, 3],
      [1, 2],
      [6, 2],
      [11, 2],
    ] as const)
      for (let right = 0; right <= all; right++) {
        const { byChance } = forcedChoice({ right, all, chance: 1 / glasses, risk: 0.05 }, "correct");
        expect(byChance, `${right} of ${all}`).toBeCloseTo(shareRight(right, all, glasses), 12);
      }
  });

  it("takes as many as are no likelier than the risk, and not one fewer", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1000 }),
        fc.constantFrom(1 / 3, 1 / 2),
        fc.double({ min: 0.005, max: 0.2, noNaN: true }),
        fc.boolean(),
        (all, chance, risk, twoSided) => {
          const asked = (right: number) => forcedChoice({ right, all, chance, risk, twoSided: twoSided && chance === 1 / 2 }, "correct");
          const { needed } = asked(0);
          if (needed === undefined) {
            expect(asked(all).byChance).toBeGreaterThan(risk);
            return;
          }
          expect(asked(needed).byChance).toBeLessThanOrEqual(risk * (1 + 1e-9));
          expect(asked(needed - 1).byChance).toBeGreaterThan(risk);
        },
      ),
    );
  });

  it("counts either side where it was not known beforehand which it would be", () => {
    const asked = (right: number) => forcedChoice({ right, all: 20, chance: 0.5, risk: 0.05, twoSided: true }, "chosen").byChance;
    for (let right = 0; right <= 20; right++) expect(asked(right)).toBe(asked(20 - right));
    expect(asked(10)).toBe(1);
  });

  it("refuses parts of an answer, and more right ones than answers", () => {
    for (const [right, all] of [
      [1.5, 6],
      [3, 6.5],
      [7, 6],
    ] as const)
      expect(() => forcedChoice({ right, all, chance: 0.5, risk: 0.05 }, "correct")).toThrow(BrewingError);
  });
});
