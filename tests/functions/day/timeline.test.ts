import { describe, expect, it } from "vitest";
import { call, callScalar } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { dayTimeline } from "../../../src/functions/day/timeline";

const steps = [
  ["Step", "Part", "Minutes", "Beware", "Really at", "Notes"],
  ["Heat the water", "before", 30, "Fasten the burner.", "", ""],
  ["Bring to the boil", "Before", 20, "", 0.4, "slow"],
  ["", "", "", "", "", ""],
  ["Cool the wort", "after", 25, "", "", ""],
];
const hops = [
  ["Hop", "g", "alpha", "min"],
  ["Cascade", 28.35, 5.5, 60],
  ["Fuggle", 7.5, "", 10],
  ["Saaz", "", "", 0],
];

const texts = (typed: unknown[]): string[] => call(dayTimeline, typed).map(([, minute, what, amount]) => [minute, what, amount].join("|"));

describe("GYLE.DAY.TIMELINE", () => {
  it("reads the tables of a sheet: headings, blank rows, columns to pass over", () => {
    expect(texts([46114.375, steps, hops])).toEqual([
      "|Heat the water|",
      "|Bring to the boil|",
      "0|Boil begins: start the 60-minute clock|",
      "0|Add Cascade|28 g",
      "50|Add Fuggle|7.5 g",
      "60|Flame out: the boil is over|",
      "60|Add Saaz|",
      "|Cool the wort|",
      "|Brew day done|",
    ]);
  });

  it("writes ounces with two digits", () => {
    expect(
      texts([
        0.5,
        steps,
        [
          ["Cascade", 1, 60],
          ["Fuggle", 0.25, 5],
        ],
        null,
        "us",
      ]),
    ).toEqual(expect.arrayContaining(["0|Add Cascade|1.00 oz", "55|Add Fuggle|0.25 oz"]));
  });

  it("cautions in the rows that we add, and keeps the brewer's own cautions", () => {
    const day = call(dayTimeline, [0.5, steps, hops]);
    const caution = (what: string): unknown => day.find((row) => String(row[2]).startsWith(what))?.[4];
    expect(caution("Heat the water")).toBe("Fasten the burner.");
    expect(caution("Boil begins")).toContain("boil over");
    expect(caution("Flame out")).toMatch(/^gas or power off/i);
    expect(caution("Add Saaz")).not.toMatch(/heat down/);
    expect(caution("Add Cascade")).toContain("boil rise");
    expect(day.every((row) => row.length === 5)).toBe(true);
  });

  it("takes a blank boil time for an hour, and blank hops for none", () => {
    for (const blank of [0, null, ""]) expect(texts([0.5, steps, hops, blank])).toEqual(texts([0.5, steps, hops, 60]));
    expect(texts([0.5, steps, [["", "", 0]]])).toEqual(texts([0.5, steps]));
  });

  it("says which hops have no name, and counts the boil as none only where it is said to be none", () => {
    expect(
      texts([
        0.5,
        steps,
        [
          ["", 20, 5, 60],
          ["", 30, 0, "dry"],
        ],
      ]),
    ).toEqual(expect.arrayContaining(["0|Add hops|20 g", "|Dry hops, another day: hops|30 g"]));
    const none = texts([0.5, steps, [["Saaz", 10, 4, 0]], 0, null, "no boil"]);
    expect(none).toEqual([
      "|Heat the water|",
      "|Bring to the boil|",
      "|No boil: flame off, it was hot long enough|",
      "|Add Saaz|10 g",
      "|Cool the wort|",
      "|Brew day done|",
    ]);
  });

  it("waits until a start and steps are filled in", () => {
    expect(call(dayTimeline, [0, steps, hops])).toEqual([[""]]);
    expect(call(dayTimeline, [0.5, [["", "", "", ""]], hops])).toEqual([[""]]);
    expect(call(dayTimeline, [0.5, [["Heat the water", "", 30]], hops])).toEqual([[""]]);
  });

  it("puts hops that are to boil too long where it is told: at the beginning of the boil, without one at flame-out", () => {
    const long = [
      ["Cascade", 28, 90],
      ["Fuggle", 7.5, 10],
      ["Chinook", 20, "stand"],
    ];
    const day = (boilMinutes: number, boil: string): string[] => texts([0.5, steps, long, boilMinutes, null, boil, null, 20, 0, "begin"]);
    expect(day(60, "boil").slice(2, 6)).toEqual([
      "0|Boil begins: start the 60-minute clock|",
      "0|Add Cascade|28 g",
      "50|Add Fuggle|7.5 g",
      "60|Flame out: the boil is over|",
    ]);
    expect(day(0, "no boil").slice(2, 5)).toEqual([
      "|No boil: flame off, it was hot long enough|",
      "|Add Cascade|28 g",
      "|Add Fuggle|7.5 g",
    ]);
    expect(texts([0.5, steps, hops, 60, null, "boil", null, 0, 0, "begin"])).toEqual(texts([0.5, steps, hops, 60]));
    expect(callScalar(dayTimeline, [0.5, steps, long, 60, null, "boil", null, 20, 0, "refuse"])).toBeInstanceOf(CellError);
  });

  it("names what is wrong", () => {
    const message = (typed: unknown[]): string => {
      const answer = callScalar(dayTimeline, typed);
      return answer instanceof CellError ? `${answer.code} ${answer.message}` : "no error";
    };
    expect(message([0.5, steps, [["Cascade", 28, 90]]])).toBe(
      "#VALUE! boil_minutes is 60 min, but Cascade is to boil 90 min; boil longer, or correct the minutes",
    );
    expect(message([9, steps])).toContain("start is 9");
    expect(message([0.5, [["Heat", "first", 30]]])).toContain('steps row 1: part is the text "first"');
    expect(message([0.5, steps, [["Cascade", 28]]])).toContain("hops is 2 columns wide");
  });
});
