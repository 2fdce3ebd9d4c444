import { describe, expect, it } from "vitest";
import { dates } from "../../../src/workbook/care/check/dates";
import { gravities } from "../../../src/workbook/care/check/gravities";
import { ownStates } from "../../../src/workbook/care/check/own-states";
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

const found = (lines: readonly (readonly CellValue[])[], rest?: Named) =>
  gravities(logSheet(lines, rest)).map(({ weight, address, words }) => `${weight} ${address}: ${words}`);

describe("a reading in the wrong scale", () => {
  const of = (reading: number, scale: string) =>
    gravities(logSheet([["", "", "", "", ""]], { og_reading: reading, og_scale: scale })).map(({ words }) => words);

  it("is told from one in the right scale", () => {
    for (const reading of [0.97, 1.05, 1.2]) expect(of(reading, "SG")).toEqual([]);
    for (const reading of [-5, 0.5, 1.3, 12, 45]) expect(of(reading, "P")).toEqual([]);
    expect([...of(0, "SG"), ...of(0, "P")]).toEqual([]);
  });

  it.each<[number, string, string]>([
    [1.21, "SG", "1.21 looks like degrees Plato, but its scale says SG: set the scale to P."],
    [45, "SG", "45 looks like degrees Plato, but its scale says SG: set the scale to P."],
    [1051, "SG", "Write 1.051 instead of 1051."],
    [901, "SG", "Write 0.901 instead of 901."],
    [46, "SG", "A gravity of 46 is no beer's: check the reading."],
    [900, "SG", "A gravity of 900 is no beer's: check the reading."],
    [1200, "SG", "A gravity of 1200 is no beer's: check the reading."],
    [0.96, "SG", "A gravity of 0.96 is no beer's: check the reading."],
    [0.97, "P", "0.970 °P? That looks like specific gravity: set the scale to SG."],
    [1.2, "P", "1.200 °P? That looks like specific gravity: set the scale to SG."],
    [-5.1, "P", "-5.1 °P is no wort's: check the reading."],
    [46, "P", "46 °P is no wort's: check the reading."],
  ])("%s under %s: %s", (reading, scale, words) => {
    expect(of(reading, scale)).toEqual([words]);
  });

  it("is found in the log as well, at its line", () => {
    expect(
      found([
        [46272, 1.04],
        [46274, 6.2, "SG", 20, ""],
        [46275, 1.012],
      ]),
    ).toEqual([expect.stringMatching(/^look B2: 6\.2 looks like degrees Plato/)]);
  });
});

describe("a gravity that rises", () => {
  it("by more than a line and a half between two readings in the order of time is told at the later one", () => {
    expect(
      found([
        [46272, 1.04],
        [46274, 1.0415],
        [46276, 1.02],
      ]),
    ).toEqual([]);
    expect(
      found([
        [46272, 1.04],
        [46274, 1.0416],
        [46276, 1.02],
      ]),
    ).toEqual([expect.stringMatching(/^look B2: Gravity rose from 1\.040 to 1\.042/)]);
    expect(
      found([
        [46276, 1.02],
        [46272, 1.04],
      ]),
    ).toEqual([]);
    expect(
      found([
        [46276, 1.04],
        [46272, 1.02],
      ]),
    ).toEqual([expect.stringMatching(/^look B1: Gravity rose from 1\.020 to 1\.040/)]);
    expect(
      found([
        ["", 1.02],
        [46272, 1.04],
      ]),
    ).toEqual([]);
    expect(
      found([
        [46272, 10.2, "P", 20, 1.041],
        [46273, 1.03],
      ]),
    ).toEqual([]);
  });
});

describe("beer packaged before it had finished", () => {
  const steady = [
    [46272, 1.04],
    [46278, 1.012],
    [46279, 1.012],
  ] as const;

  it("is a matter of safety, judged by what was known on that day", () => {
    expect(found(steady, { packaged_on: 46279, fg_expected: 1.012 })).toEqual([]);
    expect(found(steady, { packaged_on: 46279.9, fg_expected: 1.012 })).toEqual([]);
    const [early] = found(steady, { packaged_on: 46278, fg_expected: 1.012 });
    expect(early).toMatch(
      /^stop A\d+: Packaged before two readings a day apart agreed \(the readings up to then say “working”\).*burst it\. Bottles: do not open or move them; keep people away and cool the room\.$/,
    );
    expect(gravities(logSheet(steady, { packaged_on: 46278 }))).toMatchObject([{ insteadOf: "Has it finished?" }]);
  });

  it("counts a reading on the evening of that day, and none of the next", () => {
    const evening = [
      [46277.8, 1.012],
      [46278.8, 1.012],
    ] as const;
    expect(found(evening, { packaged_on: 46278, fg_expected: 1.012 })).toEqual([]);
    expect(
      found(
        [
          [46277.8, 1.012],
          [46279, 1.012],
        ],
        { packaged_on: 46278, fg_expected: 1.012 },
      ),
    ).toHaveLength(1);
    expect(
      found(
        [
          [46277.8, 1.012],
          [46279.1, 1.012],
        ],
        { packaged_on: 46278.3, fg_expected: 1.012 },
      ),
    ).toHaveLength(1);
  });

  it("starts over after dry hops, which can wake a beer up", () => {
    expect(found(steady, { packaged_on: 46279, fg_expected: 1.012, og: 1.05, count_from: "" })).toEqual([]);
    expect(found(steady, { packaged_on: 46279, fg_expected: 1.012, og: 1.05, count_from: 46278.5 })).toHaveLength(1);
  });

  it("is told with no reading at all, and in a stall", () => {
    expect(found([["", ""]], { packaged_on: 46279 })).toEqual([expect.stringMatching(/agreed: what is left may ferment/)]);
    expect(
      found(
        [
          [46272, 1.04],
          [46278, 1.022],
          [46279, 1.022],
        ],
        { packaged_on: 46280, fg_expected: 1.012 },
      ),
    ).toEqual([expect.stringContaining("say “stalled”")]);
  });

  it("is not told while it stands in the fermenter", () => {
    for (const not of ["", 0]) expect(found([[46272, 1.04]], { packaged_on: not })).toEqual([]);
  });
});

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

  it("are brew day, packaging and tasting out of order, or not of our century", () => {
    expect(days({ packaged_on: brewed, tasted_on: brewed })).toEqual([]);
    expect(days({ brewed_on: brewed + 0.5, packaged_on: brewed + 0.1 })).toEqual([]);
    expect(days({ packaged_on: brewed - 1 })).toEqual([expect.stringMatching(/^A2: Packaged on 2026-09-0\d, before it was brewed/)]);
    expect(days({ packaged_on: brewed + 5, tasted_on: brewed + 4 })).toEqual([
      expect.stringMatching(/^A3: Tasted on .*, before it was packaged/),
    ]);
    expect(days({ packaged_on: brewed + 5.8, tasted_on: brewed + 5.2 })).toEqual([]);
    for (const day of [32873, 73416])
      expect(days({ brewed_on: day })).toContainEqual(expect.stringContaining(`A1: ${day} is no day between 1990 and 2100`));
    for (const day of [32874, 73415, "", 0]) expect(days({ brewed_on: day })).toEqual([]);
  });

  it("are readings before the brew day, after tomorrow, or above an earlier one", () => {
    expect(days({}, [0, brewed, brewed + 0.5, brewed + 2, brewed + 2, today + 1.9])).toEqual([]);
    expect(days({ brewed_on: brewed + 0.5 }, [brewed + 0.2])).toEqual([]);
    expect(days({}, [brewed - 0.1])).toEqual([expect.stringMatching(/^A4: Read on .*, before the brew day/)]);
    expect(days({}, [today + 2])).toEqual([expect.stringContaining("That day is still to come")]);
    expect(days({}, [brewed + 2, "", brewed + 1, brewed + 1.5])).toEqual([
      expect.stringMatching(/^A6: Read on .*, but the line above is later/),
    ]);
    expect(days({}, ["8.9.", " "])).toEqual([expect.stringMatching(/^A4: “8\.9\.” is a text, not a date/)]);
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
    expect(missing({ attenuation: "" })).toEqual([expect.stringContaining("How much of the sugar will the yeast eat?")]);
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

describe("what the sheet's own checks say", () => {
  const sheet = handSheet(
    {
      lines: [
        ["Volumes", "fine", ""],
        ["Hops", "look", "too long"],
        ["Has it finished?", "stop", "stalled"],
      ],
    },
    { check_states: "B1:B3" },
  );

  it("is handed on with its weight and its cell, unless something more exact was said", () => {
    expect(ownStates(sheet, [])).toEqual([
      { sheet: "By hand", address: "B2", weight: "look", words: "Hops: too long" },
      { sheet: "By hand", address: "B3", weight: "stop", words: "Has it finished?: stalled" },
    ]);
    expect(ownStates(sheet, [{ sheet: "By hand", weight: "look", words: "exact", insteadOf: "Hops" }]).map(({ words }) => words)).toEqual([
      "Has it finished?: stalled",
    ]);
  });
});
