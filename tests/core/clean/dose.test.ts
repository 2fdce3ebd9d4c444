import { describe, expect, it } from "vitest";
import { callScalar } from "../../../src/functions/call";
import { cleanDose } from "../../../src/functions/clean/dose";

describe("CLEAN.DOSE", () => {
  it("is proportional to the bucket and to the strength on the label", () => {
    expect(callScalar(cleanDose, [20, 1.5])).toBeCloseTo(2 * (callScalar(cleanDose, [10, 1.5]) as number), 10);
    expect(callScalar(cleanDose, [10, 3])).toBeCloseTo(30, 10);
  });

  it("gives the same mixture in both unit systems", () => {
    // 0.2 US fl oz to the US gallon is 1 in 640.
    const metricMl = callScalar(cleanDose, [3 * 3.785411784, 1000 / 640]) as number;
    const usOunces = callScalar(cleanDose, [3, 0.2, "us"]) as number;
    expect(usOunces * 29.5735295625).toBeCloseTo(metricMl, 8);
  });

  it("waits for a bucket and for the label: no maker's dose stands in for another's", () => {
    expect(callScalar(cleanDose, [0, 3])).toBe("");
    for (const blank of [[], [""], [0], [null], [null, "us"]]) expect(callScalar(cleanDose, [10, ...blank])).toBe("");
  });
});
