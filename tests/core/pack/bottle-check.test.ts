import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkBottle, type Standing } from "../../../src/core/pack/bottle-check";
import { bottleLimits, vesselKinds, type VesselKind, type WorkingLimit } from "../../../src/core/pack/bottle-kinds";
import { airBar, equilibriumGauge, vesselGaugeBar } from "./closed-vessel-physics";

const kinds = fc.constantFrom(...vesselKinds);
const rank = { within: 0, close: 1, over: 2 } as const;
const at = (temperatureC: number, atmosphereBar = 1.01325, headspacePercent = 5): Standing => ({
  temperatureC,
  atmosphereBar,
  headspacePercent,
});
const verdict = (co2: number, celsius: number, kind: VesselKind, points = 0) => checkBottle(co2, kind, points, at(celsius)).verdict;

describe("checkBottle", () => {
  it("is over as soon as one limit is passed, and close from nine tenths on", () => {
    expect(verdict(2.6, 8, "ordinary")).toBe("within");
    expect(verdict(2.71, 8, "ordinary")).toBe("close");
    expect(verdict(3, 8, "ordinary")).toBe("close");
    expect(verdict(3.01, 8, "ordinary")).toBe("over");
  });

  it("is over for ordinary glass above 3.5 bar, however few the volumes", () => {
    const hot = checkBottle(2.4, "ordinary", 0, at(35));
    expect(hot.gaugeBar).toBeGreaterThan(3.5);
    expect(hot.verdict).toBe("over");
  });

  // By the other physics: 3 volumes at 27 °C make 3.86 bar beside an ordinary bottle's 3.5; 2.4 in a hot car, 6.4.
  it.each([
    [3, 27, "ordinary"],
    [2.4, 60, "ordinary"],
    [2.4, 60, "thick"],
    [3.5, 30, "heavy"],
  ] as const)("is over where another physics passes the limit: %f volumes at %f °C, %s", (volumes, celsius, kind) => {
    expect(vesselGaugeBar({ volumes, celsius, air: airBar[0], headspacePercent: 5, filledAt: 20, oxygenLeft: 1 })).toBeGreaterThan(
      bottleLimits[kind].gaugeBar,
    );
    expect(verdict(volumes, celsius, kind)).toBe("over");
  });

  it("adds half a volume for each point still to fall, and takes none away", () => {
    expect(checkBottle(2.4, "ordinary", 4, at(20))).toMatchObject({ verdict: "over", volumes: 4.4, fromFermentation: 2 });
    expect(checkBottle(2.4, "ordinary", -3, at(20))).toMatchObject({ volumes: 2.4, fromFermentation: 0 });
    expect(checkBottle(2.4, "ordinary", 0.5, at(20))).toMatchObject({ volumes: 2.65, fromFermentation: 0.25 });
  });

  it("of a keg leaves the hydrometer's error to its regulator, and counts all beyond", () => {
    expect(checkBottle(2.4, "keg", 1, at(4))).toMatchObject({ volumes: 2.4, fromFermentation: 0 });
    expect(checkBottle(2.4, "keg", 2, at(4))).toMatchObject({ volumes: 3.4, fromFermentation: 1 });
  });

  it("judges a keg by its pressure alone: 4 bar, close from 3.6", () => {
    for (const [volumes, wanted] of [
      [3, "within"],
      [3.3, "close"],
      [3.6, "over"],
    ] as const) {
      // The keg's own physics, of water: our pressure is up to 8 % above it in absolute terms.
      const water = equilibriumGauge(volumes, 25, 1.01325);
      expect(checkBottle(volumes, "keg", 0, at(25)).gaugeBar).toBeGreaterThan(water);
      expect(verdict(volumes, 25, "keg")).toBe(wanted);
    }
    // Cold beer may hold more than any bottle of glass.
    expect(verdict(5, 4, "keg")).toBe("within");
    // Air in a neck is no matter of a keg.
    expect(checkBottle(2.4, "keg", 0, at(20, 1, 2)).gaugeBar).toBe(checkBottle(2.4, "keg", 0, at(20, 1, 20)).gaugeBar);
  });

  it("judges bottles harder the higher they stand", () => {
    expect(checkBottle(2.4, "ordinary", 0, at(27, airBar[0])).verdict).toBe("close");
    expect(checkBottle(2.4, "ordinary", 0, at(25.7, airBar[0])).verdict).toBe("within");
    expect(checkBottle(2.4, "ordinary", 0, at(25.7, airBar[2500])).verdict).toBe("close");
  });

  it("shows no pressure below that of the air", () => {
    expect(checkBottle(0.5, "keg", 0, at(5))).toMatchObject({ verdict: "within", gaugeBar: 0 });
  });

  it("never judges more gently when it gets warmer, fizzier or less finished", () => {
    fc.assert(
      fc.property(
        kinds,
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 59, noNaN: true }),
        (kind, co2, celsius) => {
          const before = rank[verdict(co2, celsius, kind)];
          expect(rank[verdict(co2 + 0.3, celsius, kind)]).toBeGreaterThanOrEqual(before);
          expect(rank[verdict(co2, celsius + 1, kind)]).toBeGreaterThanOrEqual(before);
          expect(rank[verdict(co2, celsius, kind, 2)]).toBeGreaterThanOrEqual(before);
        },
      ),
    );
  });

  /** Common practice, from memory: raising one of these raises what a bottle is told to bear. */
  it.each([
    ["ordinary", 3, 3.5],
    ["heavy", 3.5, 4.2],
    ["thick", 4, 5],
    ["sparkling", 6, 6],
    ["plastic", 3.5, 4.2],
    ["keg", undefined, 4],
  ] as const)("lets %s bear %s volumes and %s bar, no more", (kind, volumes, gaugeBar) => {
    const limit: WorkingLimit = bottleLimits[kind];
    expect(limit).toEqual(volumes === undefined ? { gaugeBar } : { volumes, gaugeBar });
  });

  it("draws the line for sparkling wine at 6 atm, for kegs at 60 psi, for ordinary glass where a minute's proof leaves it for months", () => {
    expect(bottleLimits.sparkling.gaugeBar).toBeLessThanOrEqual(6 * 1.01325);
    expect(bottleLimits.keg.gaugeBar).toBeLessThanOrEqual(60 * 0.0689476);
    // 12 bar for a minute (GB 4544); load duration 0.663 t^(−1/16) of EN 16612 for half a year beside a minute; two thirds for scratches.
    const lasts = (hours: number): number => 0.663 * hours ** (-1 / 16);
    expect(bottleLimits.ordinary.gaugeBar).toBeLessThanOrEqual((12 * lasts(24 * 182) * (2 / 3)) / lasts(1 / 60));
    expect(Object.keys(bottleLimits)).toEqual([...vesselKinds]);
    const glass = (["ordinary", "heavy", "thick", "sparkling"] as const).map((kind) => bottleLimits[kind]);
    expect(glass.map(({ volumes }) => volumes)).toEqual([3, 3.5, 4, 6]);
    expect(glass.map(({ gaugeBar }) => gaugeBar)).toEqual([...glass.map(({ gaugeBar }) => gaugeBar)].sort((one, other) => one - other));
  });
});
