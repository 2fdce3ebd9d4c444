import { describe, expect, it } from "vitest";
import { packagingFigures } from "../../../src/workbook/brewing/companion/packaging/packaging-figures";
import type { PackagingInput } from "../../../src/workbook/brewing/companion/packaging/packaging-form";
import { packagingSafety } from "../../../src/workbook/brewing/companion/packaging/packaging-safety";
import { handSheet } from "../../support/hand-sheet";

// Where it ends is said: a steady beer a point above the expected would else be taken to end there.
const steady = { units: "metric", verdict: "steady", fg: 1.012, fg_expected: 1.012, ends_at: 1.012, beer_volume: 20 };
const bottles: PackagingInput = {
  into: "bottles",
  packagedOn: 46284,
  co2Volumes: 2.4,
  warmestSinceFermentation: 20,
  sugar: "sucrose",
  bottleVolume: 500,
  bottleKind: "ordinary",
  warmestStorage: 15,
  bottlingLoss: 1,
  conditioningTemperature: 20,
  kegTemperature: 25,
  bottlesFilled: "",
};
const keg: PackagingInput = { ...bottles, into: "keg" };
const safety = (input: Partial<PackagingInput>, sheet: Partial<Record<keyof typeof steady, string | number>> = {}, base = bottles) =>
  packagingSafety(handSheet({ ...steady, ...sheet }), { ...base, ...input });

describe("the glass", () => {
  // An ordinary bottle's working limit is 3 volumes (common practice); the last tenth before it is "close".
  it.each([
    [2.7, "clear"],
    [2.71, "confirm"],
    [3, "confirm"],
    [3.01, "refuse"],
    [4, "refuse"],
  ] as const)("of ordinary bottles, stored cool, with %f volumes: %s", (co2Volumes, level) => {
    expect(safety({ co2Volumes }).level).toBe(level);
  });

  it("of a beer that has not finished has one remedy: wait, whatever the bottles", () => {
    // The stuck beer of 1.020 where 1.012 is expected, and one that even its bottles would bear.
    for (const given of [{ co2Volumes: 2.4 }, { co2Volumes: 1, bottleKind: "sparkling" }])
      for (const base of [bottles, keg]) {
        const { level, instead, dangers } = safety(given, { fg: base === keg ? 1.014 : 1.02, verdict: "stalled" }, base);
        expect(level).toBe("refuse");
        expect(instead).toEqual([
          "Warm it up, rouse the yeast, wait, read again.",
          "Wait until two readings a day apart agree, then package.",
        ]);
        expect(dangers).toContain("It is above the gravity expected: what is left makes gas that no sugar figure knows of.");
      }
  });

  it("that cannot bear it is told what it could bear, and what else to do", () => {
    const { dangers, instead } = safety({ co2Volumes: 3.4 });
    expect(dangers).toEqual([
      "The pressure passes what these bottles may bear.",
      "Bottles already filled: do not open or move them; keep people away and cool the room.",
    ]);
    expect(instead).toEqual(["With 2.7 volumes it would stay within.", "Take stronger bottles, or a cooler place."]);
    // Heavy half litres bear 3.5 volumes.
    expect(safety({ co2Volumes: 3.1, bottleKind: "heavy" }).level).toBe("clear");
    expect(safety({ co2Volumes: 3.51, bottleKind: "heavy" }).level).toBe("refuse");
  });

  it.each([
    [1.013, 2.2, "clear"],
    [1.013, 2.21, "refuse"],
    [1.013, 2.51, "refuse"],
  ] as const)(
    "counts what may still ferment, half a volume for each 0.001 above the end: at %f with %f volumes %s",
    (fg, co2Volumes, level) => {
      const { level: found, instead } = safety({ co2Volumes }, { fg });
      expect(found).toBe(level);
      // Where that point decides, there is one remedy.
      if (level === "refuse") expect(instead).toEqual(["Wait until two readings a day apart agree, then package."]);
    },
  );

  it("counts nothing for a point above the end once the sheet says that it ends there", () => {
    const at = (ends_at: number) => packagingSafety(handSheet({ ...steady, fg: 1.013, ends_at }), bottles);
    expect(at(1.013)).toMatchObject({ level: "clear", check: expect.stringMatching(/^within: 2\.4 volumes/) as string });
    expect(at(1.012).level).toBe("refuse");
  });

  it("is never called safe where the pressure cannot be worked out", () => {
    for (const part of [
      { co2Volumes: "" },
      { warmestStorage: "" },
      { warmestStorage: 61 },
      { warmestStorage: 0 },
      { bottleKind: "jam jar" },
    ] as const) {
      const { level, dangers } = safety(part);
      expect(level).toBe("refuse");
      expect(dangers[0]).toMatch(
        /^(Target carbonation: none yet|Whether the bottle will hold the pressure (is not known yet|cannot be judged))/,
      );
    }
  });
});

describe("the keg", () => {
  // 4 bar at 25 °C by the sums of GYLE.PACK.CHECK's source: S = 1.4329 g/L; CO2 × 1.3797 × (1 + 0.00895 CO2) + 0.0316 − 1.0133 = 4, or 3.6.
  const volumesAt = (bar: number) => (Math.sqrt(1 + (4 * 0.00895 * (bar + 0.9817)) / 1.3797) - 1) / (2 * 0.00895);
  const [close, atLimit] = [volumesAt(3.6), volumesAt(4)]; // 3.231, 3.500

  it.each([
    [close - 0.01, "clear"],
    [close + 0.01, "confirm"],
    [atLimit - 0.01, "confirm"],
    [atLimit + 0.01, "refuse"],
  ] as const)("with %f volumes: %s", (co2Volumes, level) => {
    expect(safety({ co2Volumes }, {}, keg).level).toBe(level);
  });

  it("is judged at its own temperature, and names what else to do", () => {
    expect(safety({ co2Volumes: 3.6, kegTemperature: 5 }, {}, keg).level).toBe("clear");
    expect(safety({ co2Volumes: 3.6 }, {}, keg).instead).toEqual(["With 3.2 volumes it would stay within.", "Chill the beer."]);
  });
});

describe("the readings", () => {
  it.each([
    ["steady", "clear", "clear", undefined],
    ["working", "confirm", "confirm", /^The readings are not steady\./],
    ["nearly", "confirm", "confirm", /^The readings are not steady\./],
    ["stalled", "confirm", "confirm", /^It stopped above the gravity to expect\./],
    ["rising", "refuse", "confirm", /^One of the readings is wrong/],
    ["", "refuse", "confirm", /^No reading says that it has finished\./],
  ] as const)("that say “%s”: %s in bottles, %s in a keg", (verdict, inBottles, inKeg, words) => {
    const [glass, steel] = [safety({}, { verdict }), safety({}, { verdict }, keg)];
    expect([glass.level, steel.level]).toEqual([inBottles, inKeg]);
    if (!words) return expect([glass.dangers, glass.instead]).toEqual([[], []]);
    expect(glass.dangers[0]).toMatch(words);
    expect(glass.instead.length).toBeGreaterThan(0);
  });

  it("and the glass count together: the worse of the two decides, both are named", () => {
    const { level, dangers, instead } = safety({ co2Volumes: 3.4 }, { verdict: "working" });
    expect(level).toBe("refuse");
    expect(dangers).toEqual([
      expect.stringContaining("not steady"),
      expect.stringContaining("may bear"),
      expect.stringContaining("do not open or move them"),
    ]);
    expect(instead[0]).toBe("Wait until two readings a day apart agree, then package.");
  });
});

describe("figures that sugar goes by", () => {
  const of = (
    input: Partial<PackagingInput>,
    more: Readonly<Record<string, string | number | readonly (readonly (string | number)[])[]>> = {},
  ) => {
    const [cells, typed] = [handSheet({ ...steady, beer_volume: 20, ...more }), { ...bottles, sugar: "sucrose", ...input }];
    return { ...packagingSafety(cells, typed), figures: packagingFigures(cells, typed) };
  };
  it("are refused where less than nothing is lost in racking: no sugar either", () => {
    expect(of({ bottlingLoss: -1 })).toMatchObject({
      level: "refuse",
      dangers: [expect.stringMatching(/^Lost in racking is less than nothing/)],
    });
    expect(of({ bottlingLoss: -1 }).figures.sugar.value).toBeUndefined();
    expect(of({ bottlingLoss: 0 }).figures.sugar.value).toBeGreaterThan(50);
  });
  it.each([
    [20, "clear"],
    [25, "clear"],
    [25.1, "confirm"],
    [38, "confirm"],
    [15, "clear"],
    [14, "confirm"],
  ] as const)("%f °C at its warmest, of beer at 18 to 20 that may come to 22: %s", (warmestSinceFermentation, level) => {
    const asked = of({ warmestSinceFermentation }, { beer_temperatures: [[20], [18], [""]], ferment_to: 22 });
    expect(asked.level).toBe(level);
    if (level === "confirm") expect(asked.dangers[0]).toMatch(/^Sugar goes by .* °C as the warmest since it finished, but the beer/);
  });
  it.each([
    [0, "refuse"],
    [1, "refuse"],
    [2, "clear"],
    ["", "clear"],
  ] as const)("air in the neck of %s %%: %s", (headspace, level) => {
    expect(of({}, { headspace }).level).toBe(level);
    if (level === "refuse") expect(of({}, { headspace }).dangers[0]).toContain("Air in the neck: 2 to 50 %");
  });
  it("give no day of the first taste where nothing may be filled", () => {
    expect(of({ co2Volumes: 4 }).figures.firstTaste.value).toBeUndefined();
    expect(of({}).figures.firstTaste.value).toBeGreaterThan(46284);
  });
});
