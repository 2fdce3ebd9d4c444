import { describe, expect, it } from "vitest";
import { sugarSolutionDensityKgPerM3, waterDensityKgPerM3, waterKgPerL20C } from "../../../src/core/wort/density";
import { gravityFromPlato } from "../../../src/core/wort/plato";

describe("density of water", () => {
  // Tanaka et al., Metrologia 38, 2001, as printed in the documentation of an environmental package
  it.each([
    [0, 999.8428],
    [10, 999.7027],
    [15, 999.1026],
    [20, 998.2067],
    [30, 995.6488],
  ])("at %d °C is %d kg/m3 (Tanaka et al. 2001)", (temperatureC, expected) => {
    expect(Math.abs(waterDensityKgPerM3(temperatureC) - expected)).toBeLessThan(0.006);
  });
  // IAPWS-95, computed with the python package iapws
  it.each([
    [40, 992.2164],
    [60, 983.1958],
    [80, 971.7904],
  ])("at %d °C is %d kg/m3 (IAPWS-95)", (temperatureC, expected) => {
    expect(Math.abs(waterDensityKgPerM3(temperatureC) - expected)).toBeLessThan(0.02);
  });
  it("agrees with the litre of water that the mass balances use", () => {
    expect(waterDensityKgPerM3(20) / 1000).toBeCloseTo(waterKgPerL20C, 4);
  });
});

describe("density of sugar solution", () => {
  // reference model of ICUMSA SPS-4, another language
  it.each([
    [0.1, 20, 1038.115],
    [0.3, 20, 1127.032],
    [0.12, 5, 1049.238],
    [0.12, 60, 1030.018],
  ])("w %d at %d °C is %d kg/m3", (massFraction, temperatureC, expected) => {
    expect(Math.abs(sugarSolutionDensityKgPerM3(massFraction, temperatureC) - expected)).toBeLessThan(0.02);
  });
  it("gives the NBS gravities once weighed in air of 1.2 kg/m3", () => {
    for (const plato of [5, 10, 20, 30, 40]) {
      const apparent = (sugarSolutionDensityKgPerM3(plato / 100, 20) - 1.2) / (waterDensityKgPerM3(20) - 1.2);
      expect(Math.abs(apparent - gravityFromPlato(plato)), `${plato} °P`).toBeLessThan(0.00014);
    }
  });
});
