import { describe, expect, it } from "vitest";
import { daylightAndEye } from "../../../src/core/beer/cie-tables";
import { hexOfSrm, relativeAbsorbance, tristimulus } from "../../../src/core/beer/hex";

const channels = (hex: string): number[] => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

describe("the colour of a glass", () => {
  it("stands on 41 rows from 380 to 780 nm, every 10 nm", () => {
    expect(daylightAndEye.map(([wavelengthNm]) => wavelengthNm)).toEqual(Array.from({ length: 41 }, (_, index) => 380 + 10 * index));
  });
  it("is white without beer: the D65 white point of CIE 15, X 95.047 and Z 108.883 at Y 100", () => {
    const [x, y, z] = tristimulus(0, 5);
    expect(y).toBeCloseTo(1, 12);
    // sums every 10 nm instead of every 1 nm are off by up to 0.0007
    expect(Math.abs(x - 0.95047)).toBeLessThan(0.001);
    expect(Math.abs(z - 1.08883)).toBeLessThan(0.001);
    expect(hexOfSrm(1e-9, 5)).toBe("#FFFFFF");
  });
  it("keeps below the limit of ASBC Beer-10 at 700 nm: 0.039 of the absorbance at 430 nm", () => {
    expect(relativeAbsorbance(430)).toBeCloseTo(1, 12);
    expect(relativeAbsorbance(700)).toBeLessThan(0.039);
  });
  it("darkens with the SRM, and red outlasts green outlasts blue", () => {
    let before = channels(hexOfSrm(0.5, 5));
    for (let srm = 1; srm <= 60; srm += 0.5) {
      const now = channels(hexOfSrm(srm, 5));
      now.forEach((value, index) => expect(value).toBeLessThanOrEqual(before[index] ?? 0));
      expect(now[0]).toBeGreaterThanOrEqual(now[1] ?? 0);
      expect(now[1]).toBeGreaterThanOrEqual(now[2] ?? 0);
      before = now;
    }
  });
  it("depends on colour times thickness alone (Beer and Lambert)", () => expect(hexOfSrm(20, 1)).toBe(hexOfSrm(4, 5)));
});
