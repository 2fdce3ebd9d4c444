import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alcoholByVolume } from "../../../src/core/beer/alcohol";
import { blendOf } from "../../../src/core/beer/blend";

const beer = fc
  .record({
    volume: fc.double({ min: 1, max: 50, noNaN: true }),
    originalGravity: fc.double({ min: 1.03, max: 1.1, noNaN: true }),
    attenuation: fc.double({ min: 0.6, max: 0.9, noNaN: true }),
  })
  .map(({ attenuation, ...beer }) => ({ ...beer, finalGravity: 1 + (beer.originalGravity - 1) * (1 - attenuation) }));
const beers = fc.array(beer, { minLength: 1, maxLength: 5 });
const litresOf = (all: readonly { volume: number }[]): number => all.reduce((sum, { volume }) => sum + volume, 0);

describe("blendOf", () => {
  /** Litres of alcohol are kept: beers of up to 12 % shrink by less than 0.1 % when they are mixed. */
  it("keeps the alcohol that was in the beers", () => {
    fc.assert(
      fc.property(beers, (all) => {
        const alcohol = all.reduce((sum, one) => sum + one.volume * alcoholByVolume(one.originalGravity, one.finalGravity), 0);
        const { originalGravity, finalGravity } = blendOf(all);
        expect(Math.abs(alcoholByVolume(originalGravity, finalGravity) - alcohol / litresOf(all))).toBeLessThan(0.01);
      }),
    );
  });

  /** Mass over volume, which no balance of extract goes into. */
  it("weighs what the beers weigh", () => {
    fc.assert(
      fc.property(beers, (all) => {
        const mass = all.reduce((sum, { volume, finalGravity }) => sum + volume * finalGravity, 0);
        expect(Math.abs(blendOf(all).finalGravity - mass / litresOf(all))).toBeLessThan(0.0004);
      }),
    );
  });

  it("lies between its parts, and weighs by volume", () => {
    const [weak, strong] = [
      { volume: 10, originalGravity: 1.04, finalGravity: 1.008 },
      { volume: 10, originalGravity: 1.08, finalGravity: 1.018 },
    ];
    expect(blendOf([weak, strong]).finalGravity).toBeCloseTo(1.013, 3);
    expect(blendOf([weak, { ...strong, volume: 30 }]).originalGravity).toBeCloseTo(1.07, 3);
  });
});
