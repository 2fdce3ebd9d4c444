import { describe, expect, it } from "vitest";
import { checkBottle } from "../../../src/core/pack/bottle-check";
import { bottleKinds, vesselKinds } from "../../../src/core/pack/bottle-kinds";
import { callScalar } from "../../../src/functions/call";
import { packCheck } from "../../../src/functions/pack/check";
import { packInside } from "../../../src/functions/pack/inside";

describe("the words of GYLE.PACK.CHECK", () => {
  const grid = vesselKinds.flatMap((kind) =>
    [0.5, 2.4, 2.9, 3.4, 5, 9].flatMap((co2) => [5, 25, 45, 60].map((celsius) => [co2, celsius, kind] as const)),
  );

  it("begin with the verdict, never say safe, and tell what to do when over", () => {
    for (const [co2, celsius, kind] of grid) {
      for (const gravities of [[], [1.02, 1.012]]) {
        const text = callScalar(packCheck, [co2, celsius, kind, ...gravities]);
        const { verdict } = checkBottle(co2, kind, gravities.length === 0 ? 0 : 8, {
          temperatureC: celsius,
          atmosphereBar: 1.01325,
          headspacePercent: 5,
        });
        expect(text).toMatch(new RegExp(`^${verdict}: `));
        expect(text).not.toMatch(/safe/i);
        expect(text).toContain("(common practice, from memory)");
        // Beer that has not finished has one remedy; no other is named. Finished beer that is over is refused, too.
        const waits = gravities.length > 0;
        expect(String(text).includes("Do not")).toBe(waits || verdict === "over");
        expect(String(text).includes("wait until two readings a day apart agree at the gravity expected")).toBe(waits);
        if (waits) expect(text).not.toMatch(/stronger|less sugar|cooler|chill the beer/);
        if (gravities.length === 0) expect(text).toContain("not counted");
      }
    }
  });

  it("of a keg speak of its plate, and never of bottles", () => {
    // 2.4 volumes at 25 °C: H = exp(−6.8346 + 42.988 − 42.374 + 11.308) = 162.0 MPa, S = 1.4329; 3.3114 × 1.0215 + 0.0316 − 1.0133 = 2.401 bar.
    expect(callScalar(packCheck, [2.4, 25, "keg", 1.012, 1.012])).toBe(
      "within: 2.4 volumes at 25 °C make 2.4 bar in a keg; its working limit is 4 bar (common practice, from memory). The pressure on the keg's own plate comes first.",
    );
    const over = callScalar(packCheck, [5, 25, "keg", 1.012, 1.012]);
    expect(over).toMatch(
      /^over: 5 volumes at 25 °C make 6\.2\d bar in a keg; its working limit is 4 bar \(common practice, from memory\)\. Do not set a keg like this: chill the beer, or ask for less\.$/,
    );
    expect(over).not.toContain("bottle");
    expect(callScalar(packCheck, [3.3, 25, "keg", 1.012, 1.012])).toMatch(/^close: 3\.3 volumes at 25 °C make 3\.7\d bar in a keg/);
    // The sheet's case of a warm keg: 4.8 volumes at 90 °F.
    expect(callScalar(packCheck, [4.8, 90, "keg", 1.012, 1.012, "us"])).toMatch(/^over: /);
  });

  it("of bottles that are over say how to stay whole beside the ones already filled", () => {
    for (const kind of bottleKinds)
      expect(callScalar(packCheck, [9, 40, kind])).toContain(
        "Bottles already filled: do not open or move them; keep people away and cool the room.",
      );
  });

  it("answer for a hot car, in both units", () => {
    for (const hot of [
      [2.4, 60, "ordinary"],
      [2.4, 140, "ordinary", null, null, "us"],
    ])
      expect(callScalar(packCheck, hot)).toMatch(/^over: 2\.4 volumes at (60 °C|140 °F) make /);
  });

  it("of bottles are those of the figure beside them: GYLE.PACK.INSIDE answers where they let it, and only there", () => {
    for (const kind of vesselKinds)
      for (const co2 of [1.5, 2.4, 3, 3.6, 5])
        for (const celsius of [4, 20, 28, 40, 60])
          for (const altitude of [0, 2000]) {
            const asked = [co2, celsius, kind, 1.0125, 1.012, null, altitude, 4];
            const [words, figure] = [callScalar(packCheck, asked), callScalar(packInside, asked)];
            const [, said] = /make ([\d.]+) bar/.exec(String(words)) ?? [];
            if (String(words).startsWith("over"))
              expect(figure).toMatchObject({
                code: "#VALUE!",
                message: expect.stringContaining("ask GYLE.PACK.CHECK what to do") as string,
              });
            else expect(Number(figure).toFixed(2)).toBe(Number(said).toFixed(2));
          }
  });

  it("judge the same bottle harder in thinner air, and with more air sealed in", () => {
    const bar = (...more: unknown[]) => Number(callScalar(packInside, [2.4, 20, "ordinary", null, null, null, ...more]));
    expect(bar(1609)).toBeGreaterThan(bar());
    expect(bar(0, 5)).toBe(bar());
    expect(bar(0, 3)).not.toBe(bar());
  });

  it("give pressure to 0.01 bar or 0.1 psi, and count what fermentation still adds", () => {
    // 1.5 points still to fall make 0.75 volumes; more than a hydrometer's line, so the beer has not finished.
    expect(callScalar(packCheck, [1.4, 20, "heavy", 1.0135, 1.012])).toMatch(
      /^within: 2\.15 volumes at 20 °C make 2\.3\d bar in a heavy refillable beer bottle; its working limit is 3\.5 volumes and 4\.2 bar \(common practice, from memory\)\. Of this 0\.75 volumes come from fermentation still to be done\. Do not bottle yet: wait/,
    );
    expect(callScalar(packCheck, [1.4, 68, "heavy", 1.0135, 1.012, "us"])).toMatch(
      /^within: 2\.15 volumes at 68 °F make 34 psi in a heavy refillable beer bottle; its working limit is 3\.5 volumes and 60\.9 psi \(common/,
    );
    // Half a point is the hydrometer's: it counts, and the beer counts as finished.
    expect(callScalar(packCheck, [2.4, 20, "heavy", 1.0125, 1.012])).toMatch(
      /^within: 2\.65 volumes .* Of this 0\.25 volumes come from fermentation still to be done\. Holds only for sound bottles/,
    );
    // Where that point makes it too much, or nearly so, waiting is the one remedy.
    for (const [gravity, verdict] of [
      [1.0125, "close"],
      [1.0129, "over"],
    ] as const) {
      const words = String(callScalar(packCheck, [2.6, 20, "ordinary", gravity, 1.012]));
      expect(words.startsWith(`${verdict}: `)).toBe(true);
      expect(words).toMatch(/Do not bottle( yet)?: wait until/);
      expect(words).not.toMatch(/stronger|less sugar/);
    }
    expect(callScalar(packCheck, [2.4, 25, "heavy", 1.012, 1.012])).not.toContain("fermentation");
    expect(callScalar(packCheck, [2.4, 25, "heavy", 1.01, 1.012])).toContain(
      "What fermentation may still add is not known: the beer is below the gravity expected.",
    );
  });

  it("say that fermentation is not counted when only one gravity is given", () => {
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.02])).toContain("not counted");
    expect(callScalar(packCheck, [2.4, 20, "ordinary", null, 1.012])).toContain("not counted");
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.012, 1.012])).not.toContain("not counted");
  });

  it("do not pass over a beer that has fallen below the gravity expected: where it ends is not known", () => {
    const passed =
      "What fermentation may still add is not known: the beer is below the gravity expected. Bottle only when two readings a day apart agree.";
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.005, 1.012])).toContain(passed);
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.0109, 1.012])).toContain(passed);
    // A line of the hydrometer is no more than its error.
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.011, 1.012])).not.toContain(passed);
    expect(callScalar(packCheck, [2.4, 20, "ordinary", 1.012, 1.012])).not.toContain(passed);
  });

  it("are not given for a slip of the decimal point, which would pass for flat beer", () => {
    expect(callScalar(packCheck, [0.24, 20, "ordinary"])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("fermented beer holds about 0.7 or more by itself") as string,
    });
    expect(callScalar(packCheck, [0.5, 20, "ordinary"])).toMatch(/^within: /);
  });
});
