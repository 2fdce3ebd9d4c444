import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { findPythonWith } from "../../src/build/find-programs.mjs";
import { heatKjPerLitreKelvin } from "../../src/core/heat/water-heat";
import { boilingTemperatureC, standardPressurePa } from "../../src/core/water/boiling";
import { waterDensityKgPerM3 } from "../../src/core/wort/density";
import { callScalar } from "../../src/functions/call";
import { functionNamed } from "../../src/functions/registry";

/** The Python library iapws: the international formulations of water and steam, written by others from the same releases. */
const python = findPythonWith("iapws");
if (python === undefined)
  console.warn("Skipped: the comparisons with the Python library iapws, which is not here (Debian: apt install python3-iapws).");

const pressures = [20_000, 50_000, 70_000, 84_000, 101_325, 110_000, 200_000];
const temperatures = [1, 4, 10, 15, 20, 25, 40, 60, 80, 95];

const script = `
import json, sys
from iapws import IAPWS97, IAPWS95
asked = json.load(sys.stdin)
water = lambda t: IAPWS95(T=t + 273.15, P=0.101325)
print(json.dumps({
  "saturation": [IAPWS97(P=p / 1e6, x=0).T - 273.15 for p in asked["pressures"]],
  "density": [water(t).rho for t in asked["temperatures"]],
  "heat": water(99.9).h - water(20).h,
}))
`;

interface Answers {
  readonly saturation: number[];
  readonly density: number[];
  readonly heat: number;
}

function ask(): Answers {
  const { stdout, stderr, status } = spawnSync(python ?? "", ["-W", "ignore", "-c", script], {
    input: JSON.stringify({ pressures, temperatures }),
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout) as Answers;
}

describe("the saturation line", () => {
  // IAPWS R7-97(2012), Table 36: read in several programs that test themselves with it.
  it.each([
    [0.1e6, 0.372755919e3],
    [1e6, 0.453035632e3],
    [10e6, 0.584149488e3],
  ])("meets the verification value of the release at %i Pa", (pressurePa, kelvin) => {
    expect(boilingTemperatureC(pressurePa) + 273.15).toBeCloseTo(kelvin, 6);
  });
});

describe.skipIf(python === undefined)("against the Python library iapws", () => {
  const answers = python === undefined ? { saturation: [], density: [], heat: NaN } : ask();

  it("water boils at the same temperature", () => {
    expect(answers.saturation).toHaveLength(pressures.length);
    pressures.forEach((pressurePa, index) => expect(boilingTemperatureC(pressurePa)).toBeCloseTo(answers.saturation[index] ?? NaN, 5));
    // GYLE.WATER.BOILS at sea level is the fifth of them.
    expect(standardPressurePa(0)).toBe(101_325);
    const atSea = Number(callScalar(functionNamed("WATER.BOILS"), [[[0.001]]]));
    expect(atSea).toBeCloseTo(answers.saturation[4] ?? NaN, 3);
  });

  it("water weighs the same within 0.02 kg/m³ (Kell's equation against IAPWS-95)", () => {
    expect(answers.density).toHaveLength(temperatures.length);
    temperatures.forEach((temperatureC, index) =>
      expect(Math.abs(waterDensityKgPerM3(temperatureC) - (answers.density[index] ?? NaN)), `${temperatureC} °C`).toBeLessThan(0.02),
    );
  });

  it("a litre of water takes the same heat from 20 °C to the boil, within 0.3 %", () => {
    const perLitreKelvin = (answers.heat * 0.9982) / 79.9;
    expect(Math.abs(heatKjPerLitreKelvin / perLitreKelvin - 1)).toBeLessThan(0.003);
  });
});
