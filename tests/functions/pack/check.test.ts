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
