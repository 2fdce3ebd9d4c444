import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { stepVolumeL, strikeTemperatureC } from "../../../src/core/water/mash";

const grain = fc.double({ min: 1, max: 10, noNaN: true });
const water = fc.double({ min: 12, max: 60, noNaN: true });

describe("strikeTemperatureC", () => {
  it("balances: the heat that the grain gains is what the water loses", () => {
    fc.assert(
      fc.property(grain, water, fc.double({ min: 5, max: 30, noNaN: true }), (massKg, volumeL, grainC) => {
        const strikeC = strikeTemperatureC(massKg, volumeL, grainC, 66);
        expect(0.4 * massKg * (66 - grainC)).toBeCloseTo(0.9982 * volumeL * (strikeC - 66), 9);
      }),
    );
  });

  it("is the target itself for grain that is already as warm", () => {
    expect(strikeTemperatureC(5, 15, 66, 66)).toBe(66);
  });

  it("refuses a mash so thick that the water would have to boil", () => {
    expect(() => strikeTemperatureC(10, 5, 20, 67)).toThrow(/take more water/);
    expect(() => strikeTemperatureC(10, 5, 20, 67)).toThrow(BrewingError);
    // 67 + 0.40 × 47 × 17.5 / 9.982 = 99.96 °C, with 17.6 kg 100.15 °C.
    expect(strikeTemperatureC(17.5, 10, 20, 67)).toBeCloseTo(99.96, 2);
    expect(() => strikeTemperatureC(17.6, 10, 20, 67)).toThrow("would need 100 °C");
  });
});

describe("stepVolumeL", () => {
  it("balances: the heat that the mash gains is what the added water loses", () => {
    fc.assert(
      fc.property(grain, water, fc.double({ min: 70, max: 100, noNaN: true }), (massKg, volumeL, additionC) => {
        const added = stepVolumeL(massKg, volumeL, 55, 67, additionC);
        expect((0.4 * massKg + 0.9982 * volumeL) * 12).toBeCloseTo(0.9982 * added * (additionC - 67), 8);
      }),
    );
  });

  it("adds nothing for no rise, and refuses to cool or to warm with colder water", () => {
    expect(stepVolumeL(5, 15, 67, 67, 100)).toBe(0);
    expect(() => stepVolumeL(5, 15, 67, 55, 100)).toThrow(/target is below from/);
    expect(() => stepVolumeL(5, 15, 55, 67, 67)).toThrow(/must be above target/);
  });
});
