import { describe, expect, it } from "vitest";
import { changedUnits, typedFigures } from "../../../src/workbook/care/check/typed-figures";
import type { UnitSystem } from "../../../src/functions/quantities";
import { handSheet } from "../../support/hand-sheet";

type Named = Parameters<typeof handSheet>[0];
const words = (named: Named, units: UnitSystem = "metric") => typedFigures(handSheet(named), units).map((finding) => finding.words);

/** What a thermometer may show in each place, °C. */
const ranges: readonly (readonly [name: string, low: number, high: number, words: string])[] = [
  ["soak_temperature", 40, 85, "Steeping or mashing at"],
  ["tap_temperature", 0.5, 40, "Tap water at"],
  ["grain_temperature", -10, 45, "Grain at"],
  ["pitch_temperature", 2, 42, "Pitching at"],
  ["ferment_from", 0, 40, "Fermenting from"],
  ["ferment_to", 0, 45, "Fermenting to"],
  ["calibrated_at", 10, 30, "Calibration of the hydrometer at"],
  ["og_temperature", 0, 55, "Sample at"],
  ["beer_temperatures", -4, 45, "Beer at"],
  ["warmest_beer", -2, 45, "Beer at"],
  ["warmest_storage", 0, 50, "Storage at"],
  ["conditioning_temperature", 0, 40, "Conditioning at"],
  ["keg_temperature", -3, 36, "Keg at"],
];

describe("a temperature that its place cannot have", () => {
  it.each(ranges)("%s: below %s or above %s °C, and nothing between", (name, low, high, place) => {
    for (const inside of [low, high]) expect(words({ [name]: inside })).toEqual([]);
    for (const outside of [low - 0.1, high + 0.1])
      expect(words({ [name]: outside })).toEqual([expect.stringContaining(`${place} ${outside} °C?`)]);
    const fahrenheit = (celsius: number) => Number((celsius * 1.8 + 32).toFixed(6));
    for (const inside of [low + 0.01, high - 0.01]) expect(words({ [name]: fahrenheit(inside) }, "us")).toEqual([]);
    for (const outside of [low - 0.1, high + 0.1])
      expect(words({ [name]: fahrenheit(outside) }, "us")).toEqual([expect.stringContaining(`${place} ${fahrenheit(outside)} °F?`)]);
  });

  it("is taken for the other scale where that would fit, at its cell", () => {
    expect(typedFigures(handSheet({ volume: 20, pitch_temperature: 68 }), "metric")).toEqual([
      { sheet: "By hand", address: "A2", weight: "look", words: "Pitching at 68 °C? That looks like °F; this sheet is in °C." },
    ]);
    expect(words({ pitch_temperature: 19 }, "us")).toEqual(["Pitching at 19 °F? That looks like °C; this sheet is in °F."]);
    expect(words({ pitch_temperature: 400 })).toEqual(["Pitching at 400 °C? Check the figure and its unit."]);
    expect(words({ pitch_temperature: -10 }, "us")).toEqual(["Pitching at -10 °F? Check the figure and its unit."]);
    // At the ends of the other scale: 2 °C and 42 °C are 35.6 and 107.6 °F.
    expect(words({ pitch_temperature: 107.5 })[0]).toContain("looks like °F");
    expect(words({ pitch_temperature: 107.7 })[0]).toContain("Check the figure");
  });

  it("is looked for in every line of the readings, in their third column", () => {
    expect(
      typedFigures(
        handSheet({
          readings: [
            [1.05, "SG", 20],
            [1.03, "SG", 168],
            ["", "", ""],
          ],
        }),
        "metric",
      ).map(({ address }) => address),
    ).toEqual(["C2"]);
    expect(
      words({
        readings: [
          [1.05, "SG", -2],
          [1.03, "SG", 55],
        ],
      }),
    ).toEqual([]);
    for (const sample of [-2.1, 55.1]) expect(words({ readings: [[1.05, "SG", sample]] })).toHaveLength(1);
  });

  it("is looked for in the cells of its name alone", () => {
    expect(words({ volume: 20, beer_temperatures: [[18], [19]], boil_minutes: 60, readings: [["", "", ""]], top_up: 99 })).toEqual([]);
  });
});

describe("a figure that no beer can have", () => {
  it("is a bottle below 90 mL or above 5.5 L: the other unit's figure", () => {
    for (const size of [90, 5500]) expect(words({ bottle_volume: size })).toEqual([]);
    expect(words({ bottle_volume: 12 })).toEqual(["A bottle of 12 mL? That looks like fl oz; this sheet is in mL."]);
    expect(words({ bottle_volume: 5501 })).toHaveLength(1);
    expect(words({ bottle_volume: 330 }, "us")).toEqual(["A bottle of 330 fl oz? That looks like mL; this sheet is in fl oz."]);
    // 90 mL are 3.04 US fl oz, 5500 mL are 185.98.
    for (const size of [3.05, 185.9]) expect(words({ bottle_volume: size }, "us")).toEqual([]);
    for (const size of [3.04, 186.1]) expect(words({ bottle_volume: size }, "us")).toHaveLength(1);
  });

  it("is an alpha acid above 25 %, a share of one, or less than nothing", () => {
    for (const alpha of [0, 0.3, 25]) expect(words({ hop_alpha: alpha })).toEqual([]);
    expect(typedFigures(handSheet({ hop_alpha: 25.1 }), "metric")).toMatchObject([
      { weight: "look", words: expect.stringContaining("No hop has so much") as string, rule: "hops.alpha-too-high" },
    ]);
    expect(words({ hop_alpha: 0.055 })).toEqual(["An alpha acid of 0.055 %? Type it as on the packet: 5.5, not a share of one."]);
    expect(words({ hop_alpha: 0.299 })).toHaveLength(1);
    expect(words({ hop_alpha: -1 })).toEqual(["-1 in A1: less than nothing cannot be."]);
    expect(words({ hop_alpha: [[5], [""], [55]] })).toHaveLength(1);
  });

  it.each(["attenuation", "viability", "grain_efficiency", "heat_efficiency"])(
    "is more than all of it, or a share of one, as %s",
    (name) => {
      // Yeast that eats nothing is no yeast: the sheet refuses it.
      for (const percent of [name === "attenuation" ? 1.01 : 0, 1.01, 100]) expect(words({ [name]: percent })).toEqual([]);
      expect(words({ [name]: 100.1 })[0]).toMatch(/of 100\.1 %\? More than all of it cannot be\.$/);
      expect(words({ [name]: 0.75 })[0]).toMatch(/of 0\.75 %\? Type 75 for 75 %\.$/);
      expect(words({ [name]: 1 })[0]).toContain("Type 100 for 100 %");
    },
  );

  it("is a yield of that kind, in the second column of the malt", () => {
    expect(
      words({
        malt: [
          [4, 80, "mash", 3],
          [0.5, 110, "sugar", 0],
          [1, 0.8, "mash", 3],
        ],
      }),
    ).toEqual(["A yield of 110 %? More than all of it cannot be.", "A yield of 0.8 %? Type 80 for 80 %."]);
  });

  it.each(["volume", "top_up", "malt", "hops", "volume_reached", "bottles_filled", "boil_off", "kettle_loss"])(
    "is less than nothing of %s",
    (name) => {
      expect(words({ [name]: 0 })).toEqual([]);
      expect(words({ [name]: -0.1 })).toEqual(["-0.1 in A1: less than nothing cannot be."]);
    },
  );

  it("is outside what the sheet takes while it is typed, and so is refused in a file", () => {
    expect(words({ boil_minutes: 241 })).toEqual(["Boil 241 min? It may be from 0 to 240."]);
    expect(words({ volume: 0.05 }, "us")).toEqual(["Volume 0.05 US gal? It may be from 0.1 to 10000."]);
    expect(words({ attenuation: 0 })).toEqual(["Apparent attenuation 0 %? It may be from 1 to 100."]);
    expect(words({ altitude: 5001 })).toEqual(["Altitude 5001 m? It may be from -500 to 5000."]);
    expect(words({ altitude: 5001 }, "us")).toEqual([]);
    // A cell that must not be empty, and was emptied.
    expect(words({ volume: 0, carbonation: 0, headspace: 0 })).toEqual([]);
  });

  it("is a score below 1 or above 5", () => {
    expect(words({ scores: [[1], [5], [""], [3]] })).toEqual([]);
    expect(words({ scores: [[0.5], [5.5]] })).toEqual(["Score 0.5? It may be from 1 to 5.", "Score 5.5? It may be from 1 to 5."]);
  });
});

describe("units changed by hand", () => {
  const found = (beside: string, typed: string, read: UnitSystem) =>
    changedUnits(handSheet({ volume: [[20, beside]], units: typed }), read);

  it("are a matter of safety, since every figure is misread", () => {
    expect(found("L", "us", "us")).toEqual([
      {
        sheet: "By hand",
        address: "A2",
        weight: "stop",
        words: expect.stringMatching(
          /^This sheet was made in L, but its units cell says “us”.*bottle pressure too\. Type “metric” again/,
        ) as string,
      },
    ]);
    expect(found("US gal", "metric", "metric")).toMatchObject([
      { weight: "stop", words: expect.stringContaining("Type “us” again") as string },
    ]);
    expect(found("US gal", "gallons", "metric")).toHaveLength(1);
    expect(found("L", "liters", "metric")).toHaveLength(1);
  });

  it("are none where the words fit, in any case, or where nobody can tell", () => {
    expect([...found("L", "Metric", "metric"), ...found("US gal", "US", "us"), ...found("hogsheads", "us", "us")]).toEqual([]);
    expect(changedUnits(handSheet({ units: "us" }), "us")).toEqual([]);
  });
});
