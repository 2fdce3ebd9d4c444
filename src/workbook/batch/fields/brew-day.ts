import { dayLimits } from "../describe/day-limits";
import { describeFields } from "../describe/field";

/** 6. Brew day by the clock. */
export const brewDayFields = describeFields({
  /** Steps, whys and cautions in words of one's own; left out: ours for the method. What they say may be formulas over the sheet's own names. */
  steps: {
    kind: "table",
    label: "Steps",
    areas: { steps: "K:O" },
    longest: 60,
    optional: true,
    columns: {
      what: { kind: "formula", column: "K", label: "Step", called: "what", longest: 300 },
      part: {
        kind: "choice",
        column: "L",
        label: "Part",
        choices: ["before", "boil", "after"],
        message: "before, boil or after: the part of the day.",
      },
      /** How long it takes; in the boil: minutes left. */
      minutes: { kind: "formula", column: "M", label: "Minutes", longest: 300, numbers: [0, 10000] },
      caution: { kind: "text", column: "N", label: "Beware of", called: "caution", longest: 300 },
      why: { kind: "text", column: "O", label: "Why", longest: 600 },
    },
  },
  /** When each line of the brew day really happened, from the first on. */
  happened: {
    kind: "list",
    label: "Happened",
    role: "measured",
    cell: "happened",
    each: { kind: "moment", label: "Happened", format: "time", blank: true, limits: [0, dayLimits[1]] },
    longest: 200,
  },
});
