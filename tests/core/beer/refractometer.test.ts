import { describe, expect, it } from "vitest";
import { gravityFromRefractometerReadings } from "../../../src/core/beer/refractometer";

describe("refractometer in fermenting beer", () => {
  it("falls with the reading", () => {
    expect(gravityFromRefractometerReadings(12.5, 6, 1.04)).toBeLessThan(gravityFromRefractometerReadings(12.5, 6.4, 1.04));
  });
  it("depends on the corrected readings alone", () => {
    expect(gravityFromRefractometerReadings(12 * 1.06, 6 * 1.06, 1.06)).toBeCloseTo(gravityFromRefractometerReadings(12, 6, 1), 12);
  });
  it("keeps silent before 61 % attenuation, where the curve was not made", () => {
    expect(() => gravityFromRefractometerReadings(12, 12, 1)).toThrow("covers 61 % and more");
    expect(() => gravityFromRefractometerReadings(12, 8.5, 1)).toThrow("use a hydrometer until then");
    expect(gravityFromRefractometerReadings(12, 8, 1)).toBeGreaterThan(1.01);
    // 8.205 °Bx is the limit: 1 − 0.00085683 × 12 + 0.0034941 × 8.205 = 1.01839, which is 4.68 °P, 61 % off 12.
    expect(gravityFromRefractometerReadings(12, 8.17, 1)).toBeCloseTo(1.01826, 5);
    expect(() => gravityFromRefractometerReadings(12, 8.24, 1)).toThrow("covers 61 % and more");
  });
  it("refuses a reading that rose", () => expect(() => gravityFromRefractometerReadings(12, 12.5, 1)).toThrow("falls during fermentation"));
});
