import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { co2YieldOfSugar, primingSugarG, primingSugars, refuseForBottles } from "../../../src/core/pack/priming";
import { residualRange, residualVolumes as residualAt } from "../../../src/core/pack/residual";

const residualVolumes = (celsius: number): number => residualAt(celsius, 1.01325);
const temperatureC = fc.double({ min: residualRange.from, max: residualRange.to, noNaN: true });

describe("residualVolumes", () => {
  it("falls with temperature over the whole range", () => {
    const curve = Array.from({ length: 81 }, (_, half) => residualVolumes(half / 2));
    for (const [index, volumes] of curve.slice(1).entries()) expect(volumes).toBeLessThan(curve[index] ?? 0);
  });
});

describe("primingSugarG", () => {
  it("gives back the carbonation: sugar times yield is the gas that was missing", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...primingSugars),
        fc.double({ min: 1.8, max: 4.5, noNaN: true }),
        temperatureC,
        (sugar, co2, celsius) => {
          const grams = primingSugarG(19, co2, residualVolumes(celsius), sugar);
          expect(residualVolumes(celsius) + (grams * co2YieldOfSugar[sugar]) / 1.977 / 19).toBeCloseTo(co2, 9);
        },
      ),
    );
  });

  it("wants no sugar at the carbonation that the beer already holds, and refuses less", () => {
    expect(primingSugarG(19, residualVolumes(20), residualVolumes(20), "dextrose")).toBe(0);
    expect(() => primingSugarG(19, 0.8, residualVolumes(20), "dextrose")).toThrow(BrewingError);
    expect(() => primingSugarG(19, 0.8, residualVolumes(20), "dextrose")).toThrow("already holds 0.82");
  });

  it("ranks the sugars by how much of them turns to gas", () => {
    const grams = (["sucrose", "glucose", "dextrose", "honey", "malt extract"] as const).map((sugar) =>
      primingSugarG(19, 2.4, residualVolumes(20), sugar),
    );
    expect(grams).toEqual([...grams].sort((one, other) => one - other));
  });

  it("keeps to the molar balance", () => {
    expect(co2YieldOfSugar.glucose).toBeCloseTo(88 / 180, 3);
    expect(co2YieldOfSugar.sucrose).toBeCloseTo(176 / 342, 3);
    expect(co2YieldOfSugar.dextrose).toBeCloseTo(88 / 198, 3);
  });

  it("calculates malt extract as 70 % maltose, and honey by its four sugars", () => {
    expect(co2YieldOfSugar["malt extract"]).toBeCloseTo((0.7 * (4 * 44.0095)) / 342.2965, 6);
    // Crane 1980: 38.2 % fructose + 31.3 % glucose as hexoses (2 CO2 of 180.156 g), 7.3 % maltose + 1.3 % sucrose (4 CO2 of 342.297 g):
    // 0.695 × 0.48857 + 0.086 × 0.51429 = 0.33955 + 0.04423 = 0.38378.
    expect(co2YieldOfSugar.honey).toBeCloseTo(0.38378, 4);
  });
});

describe("refuseForBottles", () => {
  // Limits of bottles: common practice, src/core/pack/bottle-kinds.ts.
  it.each([
    [undefined, 3],
    ["ordinary", 3],
    ["heavy", 3.5],
    ["plastic", 3.5],
    ["thick", 4],
    ["sparkling", 6],
  ] as const)("lets %s bottles have %f volumes, no more", (kind, most) => {
    expect(() => refuseForBottles(most, kind)).not.toThrow();
    expect(() => refuseForBottles(most + 0.01, kind)).toThrow(BrewingError);
    expect(() => refuseForBottles(most + 0.01, kind)).toThrow(`${kind ?? "ordinary"} bottles bear ${most}`);
  });
});
