import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sugarSolutionDensityKgPerM3, waterDensityKgPerM3 } from "../../../src/core/wort/density";
import { efficiencyPercent, expectedGravity } from "../../../src/core/wort/expected-gravity";
import { pointsFromYieldPercent, pureSugarPointsLPerKg, yieldPercentFromPoints } from "../../../src/core/wort/extract-potential";
import type { Fermentable } from "../../../src/core/wort/fermentables";
import { specificGravity, sucroseKgPerL } from "../../sheets/follow-the-sheet/sucrose-table";

const bill: Fermentable[] = [
  { massKg: 4, yieldPercent: 80, handling: "mash" },
  { massKg: 0.3, yieldPercent: 74, handling: "steep" },
  { massKg: 0.4, yieldPercent: 90, handling: "extract" },
  { massKg: 0.2, yieldPercent: 100, handling: "sugar" },
];

describe("extract potential", () => {
  it("of pure sugar is 385.56 L°/kg", () => expect(pureSugarPointsLPerKg).toBeCloseTo(385.558, 3));
  it("agrees with the density of a sugar solution: one pound in a US gallon of it, 119.826 g/L", () => {
    // solve w from g/L by a few fixed-point steps, then compare points with 46.2
    let w = 0.115;
    for (let step = 0; step < 50; step += 1) w = 119.826 / sugarSolutionDensityKgPerM3(w, 20);
    const points = 1000 * (sugarSolutionDensityKgPerM3(w, 20) / waterDensityKgPerM3(20) - 1);
    expect(Math.abs(points - 46.2)).toBeLessThan(0.1);
  });
  it("per cent and points are each other's inverse", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        (percent) => Math.abs(yieldPercentFromPoints(pointsFromYieldPercent(percent)) - percent) < 1e-9,
      ),
    );
  });
});

describe("expected gravity", () => {
  it("lets efficiency touch the mash and the steep only", () => {
    const dissolved = bill.slice(2);
    expect(expectedGravity(dissolved, 20, 50)).toBe(expectedGravity(dissolved, 20, 90));
    expect(expectedGravity(bill, 20, 90)).toBeGreaterThan(expectedGravity(bill, 20, 50));
    // Twice the share of the grain's sugar is what half the volume does.
    const grain = bill.slice(0, 2);
    expect(expectedGravity(grain, 20, 80)).toBeCloseTo(expectedGravity(grain, 10, 40), 12);
  });
  it("is that of a sucrose solution with so much in a litre, by a printed table from elsewhere", () => {
    for (let percent = 0; percent <= 36; percent += 1) {
      const massFraction = percent / 100;
      const [mass, volume] = [massFraction, 1 / sucroseKgPerL(massFraction)];
      const gravity = expectedGravity([{ massKg: mass, yieldPercent: 100, handling: "sugar" }], volume, 70);
      // The table is an older determination: up to 0.08 kg/m3 away.
      expect(Math.abs(gravity - specificGravity(massFraction)), `${percent} %`).toBeLessThan(0.00015);
    }
  });
  it("agrees with points that are added up, as long as the wort is no stronger than most (Palmer, ch. 3-4)", () => {
    for (const points of [10, 20, 30, 40, 50])
      expect(
        Math.abs(
          expectedGravity([{ massKg: points / pureSugarPointsLPerKg, yieldPercent: 100, handling: "sugar" }], 1, 70) - (1 + points / 1000),
        ),
      ).toBeLessThan(0.00011);
  });
  it("refuses what lies beyond the sugar tables", () => {
    expect(() => expectedGravity(bill, 2, 70)).toThrow("the sugar tables end at 1.200");
    // 1.200 is about 44 % sucrose (40 °Bx is 1.179 in NBS Circular 440, Table 114): 20 L × 1.198 kg/L × 0.44 = 10.5 kg.
    const sugar = (massKg: number): Fermentable[] => [{ massKg, yieldPercent: 100, handling: "sugar" }];
    expect(expectedGravity(sugar(10.4), 20, 70)).toBeLessThan(1.2);
    expect(() => expectedGravity(sugar(10.7), 20, 70)).toThrow(/come to 1\.20\d in this volume;/);
    expect(() => expectedGravity(sugar(30), 20, 70)).toThrow(/come to 1\.\d+ in this volume, or more;/);
  });
});

describe("efficiency", () => {
  it("undoes the expected gravity", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 15, max: 60, noNaN: true }),
        (efficiency, volumeL) => Math.abs(efficiencyPercent(bill, volumeL, expectedGravity(bill, volumeL, efficiency)) - efficiency) < 1e-6,
      ),
    );
  });
  it("has no answer without grain, and none outside 0 to 100 %", () => {
    expect(() => efficiencyPercent(bill.slice(2), 20, 1.05)).toThrow("no efficiency to find");
    expect(() => efficiencyPercent(bill, 20, 1.001)).toThrow("below the 1.011 that extract and sugar alone give");
    expect(() => efficiencyPercent(bill, 20, 1.12)).toThrow("% of the grain's extract");
    expect(() => efficiencyPercent(bill, 20, expectedGravity(bill, 20, 100.6))).toThrow("would take 101 % of the grain's extract");
    expect(efficiencyPercent(bill, 20, expectedGravity(bill, 20, 100))).toBeCloseTo(100, 6);
    expect(efficiencyPercent(bill, 20, expectedGravity(bill.slice(2), 20, 70))).toBeCloseTo(0, 6);
    expect(() => efficiencyPercent(bill, 20, expectedGravity(bill.slice(2), 20, 70) - 2e-6)).toThrow("extract and sugar alone give");
  });
});
