import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { waterKgPerL20C } from "../../../src/core/wort/density";
import { massToEnrichKg } from "../../../src/core/wort/enrich";
import { mixedGravity } from "../../../src/core/wort/mix";
import { gravityFromPlato, platoFromGravity } from "../../../src/core/wort/plato";
import { volumeToBoilOffL } from "../../../src/core/wort/reduce";
import { waterToThinL } from "../../../src/core/wort/thin";

const volumeL = fc.double({ min: 1, max: 200, noNaN: true });
const gravity = fc.double({ min: 1.005, max: 1.15, noNaN: true });
const twoGravities = fc.tuple(gravity, gravity).map(([a, b]) => (a < b ? ([a, b] as const) : ([b, a] as const)));

describe("mass balances", () => {
  it("thinning with the water it names mixes to the target", () => {
    fc.assert(
      fc.property(volumeL, twoGravities, (volume, [low, high]) => {
        const water = waterToThinL(volume, high, low);
        return (
          Math.abs(
            mixedGravity([
              { volume, gravity: high },
              { volume: water, gravity: 1 },
            ]) - low,
          ) < 1e-9
        );
      }),
    );
  });
  it("boiling off and thinning undo each other, but for the shrinkage on mixing", () => {
    fc.assert(
      fc.property(volumeL, twoGravities, (volume, [low, high]) => {
        const left = volume - volumeToBoilOffL(volume, low, high);
        const refilled = left + waterToThinL(left, high, low);
        return refilled >= volume - 1e-9 && refilled < volume * 1.01;
      }),
    );
  });
  it("keeps the sugar when boiling", () => {
    const left = 28 - volumeToBoilOffL(28, 1.045, 1.055);
    expect(left * 1.055 * platoFromGravity(1.055)).toBeCloseTo(28 * 1.045 * platoFromGravity(1.045), 9);
  });
  it("adding the extract it names brings the extract to the target", () => {
    fc.assert(
      fc.property(volumeL, twoGravities, fc.double({ min: 60, max: 100, noNaN: true }), (volume, [low, high], yieldPercent) => {
        const added = massToEnrichKg(volume, low, high, yieldPercent);
        const wortKg = volume * low * waterKgPerL20C;
        const plato = (wortKg * platoFromGravity(low) + added * yieldPercent) / (wortKg + added);
        return Math.abs(gravityFromPlato(plato) - high) < 1e-9;
      }),
    );
  });
  it("a mixture lies between its parts, and does not depend on the unit of volume", () => {
    fc.assert(
      fc.property(volumeL, volumeL, twoGravities, (a, b, [low, high]) => {
        const mixed = mixedGravity([
          { volume: a, gravity: low },
          { volume: b, gravity: high },
        ]);
        const inGallons = mixedGravity([
          { volume: a / 3.785, gravity: low },
          { volume: b / 3.785, gravity: high },
        ]);
        return mixed >= low - 1e-12 && mixed <= high + 1e-12 && Math.abs(mixed - inGallons) < 1e-12;
      }),
    );
  });
  it("need nothing when the target is there already", () => {
    expect(waterToThinL(20, 1.05, 1.05)).toBe(0);
    expect(volumeToBoilOffL(20, 1.05, 1.05)).toBe(0);
    expect(massToEnrichKg(20, 1.05, 1.05, 90)).toBe(0);
  });
  it("refuse the wrong direction and the unreachable", () => {
    expect(() => waterToThinL(20, 1.05, 1.06)).toThrow("water only lowers it");
    expect(() => waterToThinL(20, 1.05, 1)).toThrow("target must be above 1.000");
    expect(() => volumeToBoilOffL(20, 1.05, 1.04)).toThrow("boiling only raises it");
    expect(() => volumeToBoilOffL(20, 1, 1.04)).toThrow("no sugar");
    expect(() => massToEnrichKg(20, 1.05, 1.04, 90)).toThrow("an addition only raises it");
    expect(() => massToEnrichKg(20, 1.05, 1.15, 30)).toThrow("never brings a wort to");
  });
});
