import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkBottle } from "../../../src/core/pack/bottle-check";
import { bottleKinds, bottleLimits, type WorkingLimit } from "../../../src/core/pack/bottle-kinds";
import { equilibriumGaugeBar } from "../../../src/core/pack/solubility";

const kinds = fc.constantFrom(...bottleKinds);
const rank = { within: 0, close: 1, over: 2 } as const;

describe("checkBottle", () => {
  it("is over as soon as one limit is passed, and close from nine tenths on", () => {
    expect(checkBottle(2.6, 15, "ordinary", 0).verdict).toBe("within");
    expect(checkBottle(2.71, 15, "ordinary", 0).verdict).toBe("close");
    expect(checkBottle(3, 15, "ordinary", 0).verdict).toBe("close");
    expect(checkBottle(3.01, 15, "ordinary", 0).verdict).toBe("over");
  });

  it("is over for ordinary glass above 3.5 bar, however few the volumes", () => {
    const hot = checkBottle(2.4, 42, "ordinary", 0);
    expect(hot.gaugeBar).toBeGreaterThan(3.5);
    expect(hot.verdict).toBe("over");
  });

  it("adds half a volume for each point still to fall, and takes none away", () => {
    expect(checkBottle(2.4, 20, "ordinary", 4)).toMatchObject({ verdict: "over", volumes: 4.4, fromFermentation: 2 });
    expect(checkBottle(2.4, 20, "ordinary", -3)).toMatchObject({ volumes: 2.4, fromFermentation: 0 });
  });

  it("judges a keg by its pressure alone: 4 bar, close from 3.6", () => {
    // Worked by hand at 25 °C, S = 10 exp(−10.73797 + 2617.25 / 298.15) = 1.4090: 3.2 × 1.977 / S − 1.01325 = 3.48 bar,
    // 3.4 volumes make 3.76, 3.6 make 4.04.
    expect(checkBottle(3.2, 25, "keg", 0).verdict).toBe("within");
    expect(checkBottle(3.4, 25, "keg", 0).verdict).toBe("close");
    expect(checkBottle(3.6, 25, "keg", 0).verdict).toBe("over");
    // Cold beer may hold more than any bottle of glass.
    expect(checkBottle(5.5, 4, "keg", 0).verdict).toBe("within");
  });

  it("judges each kind of bottle by whichever of its two limits comes first", () => {
    for (const kind of bottleKinds) {
      const { gaugeBar, volumes = Infinity }: WorkingLimit = bottleLimits[kind];
      for (const celsius of [4, 15, 27, 40]) {
        const atPressure = ((gaugeBar + 1.01325) * 10 * Math.exp(-10.73797 + 2617.25 / (celsius + 273.15))) / 1.977;
        const most = Math.min(volumes, atPressure);
        expect(checkBottle(1.001 * most, celsius, kind, 0).verdict, `${kind} at ${celsius} °C`).toBe("over");
        expect(checkBottle(0.999 * most, celsius, kind, 0).verdict, `${kind} at ${celsius} °C`).toBe("close");
      }
    }
  });

  it("shows no pressure below that of the air", () => {
    expect(checkBottle(0.5, 5, "ordinary", 0)).toMatchObject({ verdict: "within", gaugeBar: 0 });
  });

  it("never judges more gently when it gets warmer, fizzier or less finished", () => {
    fc.assert(
      fc.property(kinds, fc.double({ min: 0.5, max: 8, noNaN: true }), fc.double({ min: 1, max: 44, noNaN: true }), (kind, co2, celsius) => {
        const before = rank[checkBottle(co2, celsius, kind, 0).verdict];
        expect(rank[checkBottle(co2 + 0.3, celsius, kind, 0).verdict]).toBeGreaterThanOrEqual(before);
        expect(rank[checkBottle(co2, celsius + 1, kind, 0).verdict]).toBeGreaterThanOrEqual(before);
        expect(rank[checkBottle(co2, celsius, kind, 1).verdict]).toBeGreaterThanOrEqual(before);
      }),
    );
  });

  /** Common practice, from memory: raising one of these raises what a bottle is told to bear. */
  it.each([
    ["ordinary", 3, 3.5], ["heavy", 3.5, 4.2], ["thick", 4, 5], ["sparkling", 6, 6], ["plastic", 3.5, 4.2], ["keg", undefined, 4],
  ] as const)("lets %s bear %s volumes and %s bar, no more", (kind, volumes, gaugeBar) => {
    const limit: WorkingLimit = bottleLimits[kind];
    expect(limit).toEqual(volumes === undefined ? { gaugeBar } : { volumes, gaugeBar });
  });

  it("draws the line for beer bottles where their volumes come to at 27 °C, for sparkling wine at 6 atm, for kegs at 60 psi", () => {
    for (const kind of ["ordinary", "heavy", "thick", "plastic"] as const) {
      const { volumes, gaugeBar } = bottleLimits[kind];
      expect(Math.abs(equilibriumGaugeBar(volumes, 27) - gaugeBar), kind).toBeLessThan(0.07);
    }
    expect(bottleLimits.sparkling.gaugeBar).toBeLessThanOrEqual(6 * 1.01325);
    expect(bottleLimits.keg.gaugeBar).toBeLessThanOrEqual(60 * 0.0689476);
  });

  it("knows a limit for every kind of bottle, glass in the order of its strength", () => {
    expect(Object.keys(bottleLimits)).toEqual([...bottleKinds]);
    const glass = (["ordinary", "heavy", "thick", "sparkling"] as const).map((kind) => bottleLimits[kind]);
    expect(glass.map(({ volumes }) => volumes)).toEqual([3, 3.5, 4, 6]);
    expect(glass.map(({ gaugeBar }) => gaugeBar)).toEqual([...glass.map(({ gaugeBar }) => gaugeBar)].sort((one, other) => one - other));
  });
});
