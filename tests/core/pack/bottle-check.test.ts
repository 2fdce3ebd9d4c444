import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkBottle } from "../../../src/core/pack/bottle-check";
import { bottleKinds, bottleLimits } from "../../../src/core/pack/bottle-kinds";

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

  it("knows a limit for every kind of bottle, glass in the order of its strength", () => {
    expect(Object.keys(bottleLimits)).toEqual([...bottleKinds]);
    const glass = (["ordinary", "heavy", "thick", "sparkling"] as const).map((kind) => bottleLimits[kind]);
    expect(glass.map(({ volumes }) => volumes)).toEqual([3, 3.5, 4, 6]);
    expect(glass.map(({ gaugeBar }) => gaugeBar)).toEqual([...glass.map(({ gaugeBar }) => gaugeBar)].sort((one, other) => one - other));
  });
});
