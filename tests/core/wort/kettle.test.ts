import { describe, expect, it } from "vitest";
import { kettleGravity } from "../../../src/core/wort/kettle";
import type { Fermentable } from "../../../src/core/wort/fermentables";

const malt: Fermentable = { massKg: 3, yieldPercent: 80, handling: "mash" };
const extract: Fermentable = { massKg: 2, yieldPercent: 90, handling: "extract" };

/** The boil minute by minute, points over litres: 0.3856 for each gram in a litre of weak wort; no density of ours. */
function followed(early: number, late: number, before: number, after: number, minutes: number, lateMinutes: number): number {
  let sum = 0;
  const steps = 6000;
  for (let step = 0; step < steps; step += 1) {
    const at = (step + 0.5) / steps;
    const sugar = early + ((1 - at) * minutes <= lateMinutes ? late : 0);
    sum += (0.3856 * sugar) / (before + at * (after - before));
  }
  return 1 + sum / steps;
}

describe("kettleGravity", () => {
  it.each([
    [60, 60],
    [60, 15],
    [90, 5],
    [60, 0],
  ])("is the average over a boil of %d minutes with extract for the last %d", (minutes, lateMinutes) => {
    const boil = { beforeL: 30, afterL: 25, minutes, lateMinutes };
    expect(Math.abs(kettleGravity([malt], [extract], boil, 70) - followed(1.68, 1.8, 30, 25, minutes, lateMinutes))).toBeLessThan(0.0008);
  });

  it("rises the earlier the extract goes in", () => {
    const at = (lateMinutes: number): number => kettleGravity([malt], [extract], { beforeL: 30, afterL: 25, minutes: 60, lateMinutes }, 70);
    expect([0, 10, 30, 60].map(at)).toEqual([0, 10, 30, 60].map(at).sort());
    expect(at(60) - at(0)).toBeGreaterThan(0.02);
  });
});
