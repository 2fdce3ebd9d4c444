import { describe, expect, it } from "vitest";
import { checkBottle } from "../../../src/core/pack/bottle-check";
import { bottleKinds } from "../../../src/core/pack/bottle-kinds";
import { callScalar } from "../../../src/functions/call";
import { packCheck } from "../../../src/functions/pack/check";

describe("the words of GYLE.PACK.CHECK", () => {
  const grid = bottleKinds.flatMap((kind) => [0.5, 2.4, 2.9, 3.4, 5, 9].flatMap((co2) => [5, 25, 45].map((celsius) => [co2, celsius, kind] as const)));

  it("begin with the verdict, never say safe, and tell what to do when over", () => {
    for (const [co2, celsius, kind] of grid) {
      for (const gravities of [[], [1.02, 1.012]]) {
        const text = callScalar(packCheck, [co2, celsius, kind, ...gravities]);
        const verdict = checkBottle(co2, celsius, kind, gravities.length === 0 ? 0 : 8).verdict;
        expect(text).toMatch(new RegExp(`^${verdict}: `));
        expect(text).not.toMatch(/safe/i);
        if (verdict === "over") expect(text).toContain("wait until two readings a day apart agree");
        if (gravities.length === 0) expect(text).toContain("not counted");
      }
    }
  });

  it("of a keg speak of its plate, and never of bottles", () => {
    // 2.4 volumes at 25 °C make 2.4 × 1.977 / 1.4090 − 1.01325 = 2.35 bar; 5 volumes make 6.00 bar; 3.4 make 3.76 bar.
    expect(callScalar(packCheck, [2.4, 25, "keg", 1.012, 1.012])).toBe("within: 2.4 volumes at 25 °C make 2.35 bar in a keg; its working limit is 4 bar. The pressure on the keg's own plate comes first.");
    const over = callScalar(packCheck, [5, 25, "keg", 1.012, 1.012]);
    expect(over).toMatch(/^over: 5 volumes at 25 °C make 6 bar in a keg; its working limit is 4 bar\. Do not fill the keg like this unless its own plate allows it/);
    expect(over).not.toContain("bottle");
    expect(callScalar(packCheck, [3.4, 25, "keg", 1.012, 1.012])).toMatch(/^close: 3\.4 volumes at 25 °C make 3\.76 bar in a keg/);
  });

  it("of bottles that are over say how to stay whole beside the ones already filled", () => {
    for (const kind of bottleKinds.filter((name) => name !== "keg")) expect(callScalar(packCheck, [9, 40, kind])).toContain("Bottles already filled: do not open or move them; keep people away and cool the room.");
  });

  it("give pressure to 0.01 bar or 0.1 psi, and count what fermentation still adds", () => {
    // (3.15 × 1.977 / 1.4090 − 1.01325) bar = 3.41 bar, 49.4 psi: 1.5 points still to fall make 0.75 volumes.
    expect(callScalar(packCheck, [2.4, 25, "heavy", 1.0135, 1.012])).toMatch(/^within: 3\.15 volumes at 25 °C make 3\.41 bar in a heavy refillable beer bottle; its working limit is 3\.5 volumes and 4\.2 bar\. Of this 0\.75 volumes come from/);
    expect(callScalar(packCheck, [2.4, 77, "heavy", 1.0135, 1.012, "us"])).toMatch(/^within: 3\.15 volumes at 77 °F make 49\.4 psi in a heavy refillable beer bottle; its working limit is 3\.5 volumes and 60\.9 psi\. Of this/);
    expect(callScalar(packCheck, [2.4, 25, "heavy", 1.012, 1.012])).not.toContain("fermentation");
    expect(callScalar(packCheck, [2.4, 25, "heavy", 1.01, 1.012])).toContain("What fermentation may still add is not known: the beer is below the gravity expected.");
  });

  it("say that fermentation is not counted when only one gravity is given", () => {
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.02])).toContain("not counted");
    expect(callScalar(packCheck, [2.4, 20, "ordinary", null, 1.012])).toContain("not counted");
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.012, 1.012])).not.toContain("not counted");
  });

  it("do not pass over a beer that has fallen below the gravity expected: where it ends is not known", () => {
    const passed = "What fermentation may still add is not known: the beer is below the gravity expected. Bottle only when two readings a day apart agree.";
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.005, 1.012])).toContain(passed);
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.0109, 1.012])).toContain(passed);
    // A line of the hydrometer is no more than its error.
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.011, 1.012])).not.toContain(passed);
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.012, 1.012])).not.toContain(passed);
  });

  it("are not given for a slip of the decimal point, which would pass for flat beer", () => {
    expect(callScalar(packCheck, [0.24, 20, "ordinary"])).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("fermented beer holds about 0.7 or more by itself") as string });
    expect(callScalar(packCheck, [0.5, 20, "ordinary"])).toMatch(/^within: /);
  });
});
