import { describe, expect, it } from "vitest";
import { viabilityPercent, yeastKinds } from "../../../src/core/yeast/viability";

describe("viabilityPercent", () => {
  it.each(yeastKinds)("of %s yeast begins at 100 % and falls, but never to nothing", (kind) => {
    expect(viabilityPercent(0, kind)).toBe(100);
    expect(viabilityPercent(60, kind)).toBeLessThan(viabilityPercent(30, kind));
    expect(viabilityPercent(1100, kind)).toBeGreaterThan(0);
  });

  it("falls by the same share every month", () => {
    expect(viabilityPercent(90, "liquid") / viabilityPercent(60, "liquid")).toBeCloseTo(0.8, 12);
  });
});
