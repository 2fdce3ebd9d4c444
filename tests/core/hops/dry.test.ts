import { describe, expect, it } from "vitest";
import { bitternessAfterDryHopping } from "../../../src/core/hops/dry";

/**
 * What the papers say in words (from memory): beer of less than 20 IBU comes out more bitter, beer of more than 40 not more
 * (Maye and Smith 2016, at about 8 g/L); humulinones bring 2 to 5 mg for each gram of hops, 53 to 79 % as bitter.
 */
describe("bitternessAfterDryHopping", () => {
  it.each([5, 10, 20])("gains at %d IBU", (ibu) => {
    expect(bitternessAfterDryHopping(ibu, 7.7)).toBeGreaterThan(ibu + 3);
  });

  it.each([45, 60, 90])("does not gain at %d IBU", (ibu) => {
    expect(bitternessAfterDryHopping(ibu, 7.7)).toBeLessThan(ibu);
  });

  it("lies between what the least and the most of the ranges published give", () => {
    for (const grams of [2, 4, 8, 16]) {
      const gained = bitternessAfterDryHopping(0, grams);
      expect(gained).toBeGreaterThan(grams * 2 * 0.53);
      expect(gained).toBeLessThan(grams * 5 * 0.79);
    }
  });

  it("loses iso-alpha acid as was measured: 48, about 38 with half as much, 30 mg/L", () => {
    const iso = (grams: number): number => bitternessAfterDryHopping(48, grams) - bitternessAfterDryHopping(0, grams);
    expect(iso(0)).toBe(48);
    expect(Math.abs(iso(3.87) - 37)).toBeLessThan(2);
    expect(Math.abs(iso(7.74) - 30)).toBeLessThan(1);
  });

  it("ends where nothing is published", () => {
    expect(bitternessAfterDryHopping(30, 16)).toBeGreaterThan(0);
    expect(() => bitternessAfterDryHopping(30, 16.1)).toThrow(/covers up to 16 g\/L/);
  });
});
