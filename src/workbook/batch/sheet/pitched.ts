import type { Field } from "./fields";

/** What the lines of the clock say, without those for another day. */
const words = "INDEX(timeline,0,3)";
const lineNumbers = `(ROW(${words})-ROW(INDEX(timeline,1,3))+1)`;
/** The last line that speaks of pitching; a teacher may word it otherwise. */
const lastThatPitches = `SUMPRODUCT(MAX(ISNUMBER(SEARCH("pitch",${words}))*ISNUMBER(INDEX(timeline,0,1))*${lineNumbers}))`;
const planned = "INDEX(timeline,pitch_line,1)";
const logged = "INDEX(happened,pitch_line,1)";

/**
 * When the fermentation began: the time that was written beside the line that pitches, else the planned one. A time of day
 * is of the day that brings it nearest to the plan, so that a day may run past midnight. Where no line speaks of pitching,
 * the end of the brew day counts.
 */
export const pitchedAt: readonly [string, Field][] = [
  [
    "Line of the clock that pitches",
    {
      content: `=IF(${lastThatPitches}>0,${lastThatPitches},IFERROR(MATCH("Brew day done",${words},0),0))`,
      format: "whole",
      name: "pitch_line",
    },
  ],
  [
    "Yeast pitched at",
    {
      content: `=IF(OR(NOT(ISNUMBER(brewed_on)),pitch_line=0),"",IF(ISNUMBER(${logged}),IF(${logged}>=1,${logged},${logged}+INT(${planned}-${logged}+0.5)),${planned}))`,
      format: "dateTime",
      name: "pitched_at",
      note: "The fermentation begins here: as written beside the line that pitches the yeast, else as planned.",
    },
  ],
];
