import { expect, it } from "vitest";
import { firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { dayLines } from "../../../src/workbook/brewing/companion/brew-day/day-lines";
import { isPitching, pitchedWords, pitchingDoubts } from "../../../src/workbook/brewing/companion/brew-day/pitching";
import { paperSheet } from "../../support/paper-sheet";

/** The sample's yeast is given at 66 °F and ferments from 60 to 70 °F. */
const day = (typed = {}) => paperSheet({ ...firstExtractBatch(), happened: [], readings: [] }, typed);

it("asks for the wort's temperature at the one line at which the yeast goes in, whatever words a teacher has for it", () => {
  const asked = (sheet: ReturnType<typeof day>) => dayLines(sheet).filter((line) => isPitching(sheet, line));
  expect(asked(day()).map(({ what }) => what)).toEqual([expect.stringMatching(/^Pitch /)]);
  const row = day()
    .block("steps")
    .findIndex(([what]) => String(what).startsWith("Pitch"));
  expect(asked(day({ [`steps.${row}`]: "Now we pitch it" })).map(({ what }) => what)).toEqual(["Now we pitch it"]);
  // Where nobody pitches, the sheet counts from the day's end: that is no step with yeast in it.
  expect(asked(day({ [`steps.${row}`]: "The yeast goes in" }))).toEqual([]);
});

it.each([
  ["", /^How warm is the wort\? Too warm, it harms the yeast; this sheet pitches at 66 °F\.$/],
  [66, undefined],
  [72, undefined],
  [73, /^At 73 °F it is too warm for this yeast and will taste of it\.$/],
  // Above 80 °F ale yeast is harmed (common practice).
  [81, /^Pitching at 81 °F harms the yeast: chill below 80 °F\.$/],
  [57, /^At 57 °F it is so cold that the yeast may stop\.$/],
  [19, /^Pitching at 19 °F\? That looks like °C; this sheet is in °F\.$/],
  [212, /^Pitching at 212 °F\?/],
] as const)("wort at %s °F", (warmth, doubt) => {
  const doubts = pitchingDoubts(day(), warmth);
  expect(doubts).toEqual(doubt === undefined ? [] : [expect.stringMatching(doubt)]);
});

it("doubts hot wort even where the plan itself is as hot", () => {
  expect(pitchingDoubts(day({ pitch_temperature: 85 }), 85)).toEqual([expect.stringMatching(/harms the yeast/)]);
});

it("keeps it in the sheet's unit", () => expect(pitchedWords(day(), 68)).toBe("Wort at 68 °F as the yeast went in."));
