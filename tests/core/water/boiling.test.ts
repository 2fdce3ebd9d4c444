import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boilingTemperatureC, standardPressurePa, waterBoilsAtC } from "../../../src/core/water/boiling";

describe("boilingTemperatureC", () => {
  it("meets the check values of IAPWS R7-97(2012), Table 36", () => {
    expect(boilingTemperatureC(0.1e6) + 273.15).toBeCloseTo(372.755919, 6);
    expect(boilingTemperatureC(1e6) + 273.15).toBeCloseTo(453.035632, 6);
    expect(boilingTemperatureC(10e6) + 273.15).toBeCloseTo(584.149488, 6);
  });

  it("goes back to the temperatures of Table 35, where the saturation pressure is given", () => {
    expect(boilingTemperatureC(0.00353658941e6) + 273.15).toBeCloseTo(300, 6);
    expect(boilingTemperatureC(2.63889776e6) + 273.15).toBeCloseTo(500, 6);
    expect(boilingTemperatureC(12.3443146e6) + 273.15).toBeCloseTo(600, 6);
  });
});

describe("standardPressurePa", () => {
  it("is 101325 Pa at the sea, and the tabled pressure above it (US Standard Atmosphere 1976, from memory)", () => {
    expect(standardPressurePa(0)).toBe(101325);
    expect(standardPressurePa(1000)).toBeCloseTo(89874.6, -0.5);
    expect(standardPressurePa(2000)).toBeCloseTo(79495.2, -0.5);
    expect(standardPressurePa(4000)).toBeCloseTo(61640.2, -0.5);
  });
});

describe("waterBoilsAtC", () => {
  it("falls with the altitude, by 1 °C in some 300 m", () => {
    const altitude = fc.double({ min: -500, max: 4900, noNaN: true });
    fc.assert(
      fc.property(altitude, (metres) => {
        const drop = waterBoilsAtC(metres) - waterBoilsAtC(metres + 100);
        expect(drop).toBeGreaterThan(0.3);
        expect(drop).toBeLessThan(0.36);
      }),
    );
  });

  it("stays within the range that HOPS.IBU and HEAT take, over the altitudes that are allowed", () => {
    expect(waterBoilsAtC(5000)).toBeGreaterThan(80);
    expect(waterBoilsAtC(0)).toBeLessThan(100);
    expect(waterBoilsAtC(-500)).toBeLessThan(102);
  });
});
