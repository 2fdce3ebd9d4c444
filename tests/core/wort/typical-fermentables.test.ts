import { describe, expect, it } from "vitest";
import { middle, typicalFermentables, typicalOf } from "../../../src/core/wort/typical-fermentables";

const called = (name: string) => typicalFermentables.find((one) => one.name === name)!;

/** Points of a pound in a US gallon, J. Palmer, How to Brew, ch. 12, table of typical malt yields (from memory); sucrose gives 46.2. */
const points: readonly (readonly [string, number])[] = [
  ["Pilsner malt", 37],
  ["Pale ale malt", 38],
  ["Wheat malt", 38],
  ["Vienna malt", 36],
  ["Munich malt", 36],
  ["Biscuit malt", 35],
  ["Brown malt", 32],
  ["Crystal malt, light", 35],
  ["Crystal malt, medium", 34],
  ["Crystal malt, dark", 33],
  ["Chocolate malt", 29],
  ["Black malt", 26],
  ["Roasted barley", 26],
  ["Flaked barley", 32],
  ["Flaked oats", 32],
  ["Flaked maize", 39],
  ["Pale malt extract, liquid", 36],
  ["Pale malt extract, dry", 43],
];

describe("typical malts, extracts and sugars", () => {
  it.each(points)("%s gives %d points", (name, ppg) => {
    const [lowest, highest] = called(name).yieldPercent;
    const percent = (100 * ppg) / 46.2;
    expect(percent).toBeGreaterThanOrEqual(lowest - 0.5);
    expect(percent).toBeLessThanOrEqual(highest + 0.5);
  });

  it("are ranges: yields that are possible, colours from pale to black, none twice", () => {
    expect(new Set(typicalFermentables.map(({ name }) => name)).size).toBe(typicalFermentables.length);
    for (const { yieldPercent, lovibond, name } of typicalFermentables) {
      expect(yieldPercent[0], name).toBeLessThanOrEqual(yieldPercent[1]);
      expect(yieldPercent[1], name).toBeLessThanOrEqual(100);
      expect(lovibond[0], name).toBeLessThanOrEqual(lovibond[1]);
      expect(middle(yieldPercent), name).toBeGreaterThan(50);
    }
    // Dextrose with its molecule of water, by atomic weights.
    expect(middle(called("Dextrose").yieldPercent)).toBeCloseTo((100 * 180.156) / 198.171, 0);
  });

  it.each([
    ["Munich malt", "Munich malt"],
    ["munich type I", "Munich malt"],
    ["Crystal 120, dark", "Crystal malt, dark"],
    ["Crystal malt, medium", "Crystal malt, medium"],
    ["Caramel malt", "Crystal malt, medium"],
    ["Pale malt", "Pale ale malt"],
    ["Pale malt extract, liquid", "Pale malt extract, liquid"],
    ["Dry extract, pale", "Pale malt extract, dry"],
    ["Wheat malt extract", undefined],
    ["Corn sugar", "Dextrose"],
    ["Rolled oats", "Flaked oats"],
    ["My own", undefined],
    ["", undefined],
  ])("knows %s", (written, name) => {
    expect(typicalOf(written)?.name).toBe(name);
  });
});
