import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { starterVolumeL } from "../../../src/core/yeast/starter";

const cells = fc.double({ min: 10, max: 1000, noNaN: true });
const growth = fc.double({ min: 1, max: 3.7, noNaN: true });

describe("starterVolumeL", () => {
  it("is the fit to the table the other way: 152 V^0.43 cells come back", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 8, noNaN: true }), (litres) => {
        expect(starterVolumeL(100, 152 * litres ** 0.43, 1.036, "still")).toBeCloseTo(litres, 8);
      }),
    );
  });

  it("takes more wort for more growth, and as many times the wort for as many times the yeast", () => {
    fc.assert(
      fc.property(cells, growth, growth, (now, a, b) => {
        expect(starterVolumeL(now, now * Math.max(a, b), 1.036, "still")).toBeGreaterThanOrEqual(
          starterVolumeL(now, now * Math.min(a, b), 1.036, "still") - 1e-12,
        );
        expect(starterVolumeL(3 * now, 3 * now * a, 1.036, "still")).toBeCloseTo(3 * starterVolumeL(now, now * a, 1.036, "still"), 8);
      }),
    );
  });

  it("feeds every new cell: never more than 1.4 × 10⁹ for each gram of extract", () => {
    fc.assert(
      fc.property(cells, growth, fc.double({ min: 1.005, max: 1.05, noNaN: true }), (now, times, gravity) => {
        const litres = starterVolumeL(now, now * times, gravity, "still");
        // Points of gravity over 0.386 litre-degrees for each gram: another way to the extract, good to 1 %.
        const extractG = (litres * (gravity - 1) * 1000) / 0.386;
        expect(now * times - now).toBeLessThanOrEqual(1.4 * extractG * 1.02 + 1e-9);
      }),
    );
  });

  it("grows with weak wort only where sugar runs short", () => {
    expect(starterVolumeL(100, 152, 1.036, "still")).toBe(starterVolumeL(100, 152, 1.02, "still"));
    expect(starterVolumeL(100, 152, 1.008, "still")).toBeGreaterThan(1.5 * starterVolumeL(100, 152, 1.02, "still"));
    // Worked by hand: 2.0544 °P, 10 × 2.0544 × 1.008 × 0.9982 = 20.671 g/L; 52 / (1.4 × 20.671).
    expect(starterVolumeL(100, 152, 1.008, "still")).toBeCloseTo(1.7968, 3);
  });

  it("needs no starter for cells that are there, and half a litre for a pack at least", () => {
    expect(starterVolumeL(100, 100, 1.036, "still")).toBe(0);
    expect(starterVolumeL(100, 101, 1.036, "still")).toBe(0.5);
  });

  it("says what to grow to first when it is too much for one step", () => {
    expect(() => starterVolumeL(100, 400, 1.036, "still")).toThrow(BrewingError);
    expect(() => starterVolumeL(100, 400, 1.036, "still")).toThrow("grow to 371 billion first");
    // 152 × 8^0.43 = 371.69.
    expect(starterVolumeL(100, 371.6, 1.036, "still")).toBeCloseTo(8, 1);
    expect(() => starterVolumeL(100, 372, 1.036, "still")).toThrow("covers up to 3.7 times");
  });

  /** White and Zainasheff, from memory: stirring grows two to three times the yeast; ours is the least of it, in new cells. */
  it("grows twice as many new cells in the same wort where it is stirred, as long as there is sugar", () => {
    for (const wanted of [130, 152, 205, 276]) {
      const litres = starterVolumeL(100, wanted, 1.05, "still");
      expect(starterVolumeL(100, 100 + 2 * (wanted - 100), 1.05, "stirred")).toBeCloseTo(litres, 9);
    }
    expect(starterVolumeL(100, 101, 1.036, "stirred")).toBe(0.5);
    // Worked by hand: 20.671 g of extract in a litre of 1.008, as above; 500 / (1.4 × 20.671).
    expect(starterVolumeL(1000, 1500, 1.008, "stirred")).toBeCloseTo(500 / (1.4 * 20.671), 2);
    expect(() => starterVolumeL(100, 650, 1.036, "stirred")).toThrow("covers up to 6.4 times");
  });
});
