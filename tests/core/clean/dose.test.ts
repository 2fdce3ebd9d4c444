import { describe, expect, it } from "vitest";
import { callScalar } from "../../../src/functions/call";
import { cleanDose } from "../../../src/functions/clean/dose";

describe("CLEAN.DOSE", () => {
  it("is proportional to the bucket and to the strength on the label", () => {
    expect(callScalar(cleanDose, [20])).toBeCloseTo(2 * (callScalar(cleanDose, [10]) as number), 10);
    expect(callScalar(cleanDose, [10, 3])).toBeCloseTo(30, 10);
  });

  it("gives the same mixture in both unit systems", () => {
    const metricMl = callScalar(cleanDose, [3 * 3.785411784]) as number;
    const usOunces = callScalar(cleanDose, [3, 0.2, "us"]) as number;
    expect(usOunces * 29.5735295625).toBeCloseTo(metricMl, 8);
  });

  it("waits for a bucket, and takes a blank strength as the usual one", () => {
    expect(callScalar(cleanDose, [0])).toBe("");
    expect(callScalar(cleanDose, [10, ""])).toBe(15.625);
  });
});
