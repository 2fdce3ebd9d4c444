import { describe, expect, it } from "vitest";
import { dates } from "../../../src/workbook/care/check/dates";
import { stillToFill } from "../../../src/workbook/care/check/still-to-fill";
import type { CellValue } from "../../../src/workbook/grid/read/named-cells";
import { handSheet } from "../../support/hand-sheet";

type Named = Parameters<typeof handSheet>[0];
/** Day number of 6 September 2026. */
const brewed = 46271;

/** The log of a batch: day, reading, its scale and temperature, and the gravity that the sheet makes of them, side by side. */
function logSheet(lines: readonly (readonly CellValue[])[], rest: Named = {}) {
  const cells = lines.map(([when = "", reading = "", scale = "SG", sample = 20, gravity = reading]) => [
    when,
    reading,
    scale,
    sample,
    gravity,
  ]);
  const last = lines.length;
  return handSheet(
    { lines: cells, og_reading: "", og_scale: "SG", packaged_on: "", fg_expected: "", ...rest },
    { reading_times: `A1:A${last}`, readings: `B1:D${last}`, gravities: `E1:E${last}` },
  );
}

describe("days that cannot follow one another", () => {
  const today = 46400;
  const days = (rest: Named, times: readonly CellValue[] = [""], happened: readonly CellValue[] = [""]) =>
    dates(
      handSheet({
        brewed_on: brewed,
        packaged_on: "",
        tasted_on: "",
        reading_times: times.map((time) => [time]),
        happened: happened.map((time) => [time]),
        ...rest,
      }),
      today,
    ).map(({ address, words }) => `${address}: ${words}`);

  it("are packaging and tasting out of order, or not of our century", () => {
    expect(days({ packaged_on: brewed, tasted_on: brewed })).toEqual([]);
    expect(days({ brewed_on: brewed + 0.5, packaged_on: brewed + 0.1 })).toEqual([]);
    expect(days({ packaged_on: brewed + 5, tasted_on: brewed + 4 })).toEqual([
      expect.stringMatching(/^A3: Tasted on .*, before it was packaged/),
    ]);
    expect(days({ packaged_on: brewed + 5.8, tasted_on: brewed + 5.2 })).toEqual([]);
    for (const day of [32873, 73416])
      expect(days({ brewed_on: day })).toContainEqual(expect.stringContaining(`A1: ${day} is no day between 1990 and 2100`));
    for (const day of [32874, 73415, "", 0]) expect(days({ brewed_on: day })).toEqual([]);
  });

  it("are readings after tomorrow, or above an earlier one", () => {
    expect(days({}, [0, brewed, brewed + 0.5, brewed + 2, brewed + 2, today + 1.9])).toEqual([]);
    expect(days({ brewed_on: brewed + 0.5 }, [brewed + 0.2])).toEqual([]);
    expect(days({}, [today + 2])).toEqual([expect.stringContaining("That day is still to come")]);
    expect(days({}, [brewed + 2, "", brewed + 1, brewed + 1.5])).toEqual([
      expect.stringMatching(/^A6: Read on .*, but the line above is later/),
    ]);
  });

  it("are steps of the brew day that happened before the one above, but midnight may pass", () => {
    expect(days({}, [""], [0.4, 0.4, "", 0.5])).toEqual([]);
    expect(days({}, [""], [0.4, "", 0.39])).toEqual([expect.stringMatching(/^A7: This step happened before the one above it/)]);
    expect(days({}, [""], [0.9, 0.05])).toEqual([]);
    expect(days({}, [""], [0.65, 0.05])).toHaveLength(1);
    expect(days({}, [""], [0.9, 0.35])).toHaveLength(1);
  });
});

describe("what is still to fill in", () => {
  const whole = {
    volume: 20,
    brewed_on: brewed,
    attenuation: 75,
    packaged_on: "",
    volume_reached: "",
    malt: [
      [4, 80, "mash", 3],
      ["", "", "", ""],
    ],
    hops: [
      [30, 8, 60],
      ["", "", ""],
    ],
    readings: [["", "", ""]],
    reading_times: "",
  } as const;
  const missing = (rest: Named) =>
    stillToFill(handSheet({ ...whole, ...rest })).map(({ weight, address, words }) => `${weight} ${address}: ${words}`);

  it("is nothing on a whole sheet", () => {
    expect(missing({})).toEqual([]);
  });

  it("is a figure that everything needs", () => {
    for (const volume of ["", 0]) expect(missing({ volume })).toEqual([expect.stringMatching(/^fill A1: How much beer\?/)]);
    expect(missing({ brewed_on: "" })).toEqual([expect.stringContaining("No brew day yet")]);
    expect(missing({ attenuation: "" })).toEqual([expect.stringContaining("What apparent attenuation do you expect?")]);
    expect(missing({ packaged_on: brewed + 10 })).toEqual([expect.stringContaining("How much reached the fermenter?")]);
    expect(missing({ packaged_on: brewed + 10, volume_reached: 19 })).toEqual([]);
    expect(missing({ malt: [["", "", "", ""]], attenuation: "" })).toEqual([expect.stringContaining("No malt or sugar yet")]);
  });

  it("is a line begun and not finished, at its first gap; 0 is a figure", () => {
    expect(missing({ malt: [[4, "", "mash", ""]] })).toEqual([expect.stringMatching(/^fill B6: This malt has no yield yet/)]);
    expect(missing({ malt: [[4, 80, "mash", 0]] })).toEqual([]);
    const { malt: _, ...others } = whole;
    const named = handSheet(
      {
        lines: [
          ["Pale", "", "", "", ""],
          ["", "", "", "", ""],
        ],
        ...others,
      },
      { malt: "B1:E2" },
    );
    expect(stillToFill(named).map(({ address, words }) => `${address}: ${words}`)).toEqual([
      expect.stringMatching(/^B1: This malt has no mass yet/),
    ]);
    expect(
      missing({
        hops: [
          [30, 8, 0],
          [20, "", 10],
        ],
      }),
    ).toEqual([expect.stringMatching(/^fill B9: This hop has no alpha acid yet/)]);
  });

  it("is a reading without figure, day or temperature", () => {
    const { readings: _, reading_times: __, ...others } = whole;
    const reading = (...cells: CellValue[]) =>
      stillToFill(logSheet([cells], others)).map(({ weight, address, words }) => `${weight} ${address}: ${words}`);
    expect(reading(46272, 1.04, "SG", 20)).toEqual([]);
    expect(
      stillToFill(
        logSheet(
          [
            [46272, 1.04, "SG", 20],
            [46273, 1.03, "SG", ""],
            ["", "", "", ""],
          ],
          others,
        ),
      ).map(({ address }) => address),
    ).toEqual(["D2"]);
    expect(reading(46272, "", "", "")).toEqual([expect.stringMatching(/^fill B1: This reading has no figure yet/)]);
    expect(reading("", 1.04, "SG", 20)).toEqual([expect.stringMatching(/^fill A1: .*no day and time yet/)]);
    expect(reading(46272, 1.04, "SG", "")).toEqual([expect.stringMatching(/^fill D1: .*no sample temperature yet/)]);
  });
});
