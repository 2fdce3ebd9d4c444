import { clockAt, requireStart } from "../../core/day/clock";
import { brewDay } from "../../core/day/schedule";
import { describeFunction } from "../describe";
import { minutes, number, optional, units } from "../vocabulary";
import { hops, steps } from "./tables";
import { timelineWords } from "./timeline-words";

export const dayTimeline = describeFunction({
  id: "DAY.TIMELINE",
  summary: "The brew day by the clock: when to do what, how much, and what to beware of.",
  parameters: {
    start: number("date", { doc: "When you begin: a date with its time, or a time of day such as 9:00.", limits: { above: 0, atMost: 73415 }, typical: 0.375, hint: () => "type a time such as 9:00, or a date with its time" }),
    steps,
    hops,
    boilMinutes: optional(minutes("How long the wort boils.", { limits: { atLeast: 1, atMost: 300 }, blank: "missing" }), 60),
    units,
  },
  result: {
    kind: "grid",
    doc: "One row for each thing to do. The first column is a date with its time (format the cells as time), the second the minutes into the boil.",
    columns: ["time", "minutes into the boil", "what to do", "amount", "caution"],
  },
  equation: "boil begins = start + minutes of the steps before; addition = boil begins + boil_minutes − minutes left",
  sources: [{ cite: "common practice", where: "additions are counted by the minutes left in the boil; the clock starts when the wort boils" }],
  examples: [
    {
      arguments: [0.375, [["Heat the water", "before", 30, ""], ["Cool the wort", "after", 30, "Sanitise first."]], [["Cascade", 28, "", 60]], 60],
      value: [
        [0.375, "", "Heat the water", "", ""],
        [0.375 + 30 / 1440, 0, "Boil begins: start the 60-minute clock", "", "Stay with it: foam can boil over in seconds. Lid off, heat down."],
        [0.375 + 30 / 1440, 0, "Add Cascade", "28 g", "Hops make the boil rise: turn the heat down, add them slowly."],
        [0.4375, 60, "Flame out: the boil is over", "", "Gas off before you lift it. From here only sanitised things touch it."],
        [0.4375, "", "Cool the wort", "", "Sanitise first."],
        [0.4375 + 30 / 1440, "", "Brew day done", "", ""],
      ],
      tolerance: 1e-9,
      from: "worked by hand: 9:00, boil from 9:30 to 10:30, done at 11:00",
    },
    {
      arguments: [46114.5, [["Stir in the rest of the extract", "boil", 15, "Heat off until it is dissolved: it scorches."]], [["Fuggle", 1, 0]], 30, "us"],
      value: [
        [46114.5, 0, "Boil begins: start the 30-minute clock", "", "Stay with it: foam can boil over in seconds. Lid off, heat down."],
        [46114.5 + 15 / 1440, 15, "Stir in the rest of the extract", "", "Heat off until it is dissolved: it scorches."],
        [46114.5 + 30 / 1440, 30, "Flame out: the boil is over", "", "Gas off before you lift it. From here only sanitised things touch it."],
        [46114.5 + 30 / 1440, 30, "Add Fuggle", "1.00 oz", "Hops make the boil rise: turn the heat down, add them slowly."],
        [46114.5 + 30 / 1440, "", "Brew day done", "", ""],
      ],
      tolerance: 1e-9,
      from: "worked by hand: noon, step at 12:15, hops at flame-out 12:30",
    },
  ],
  cautions: ["A plan, not a promise: bring the times along by typing when the boil really began.", "Boiling wort scalds: keep children and pets away, wear shoes and gloves, never leave a burner alone."],
  compute: ({ start, steps, hops, boilMinutes }, context) => {
    const additions = (hops ?? []).map(({ hop, mass, minutes }) => ({ hop, massG: mass, minutes }));
    const begin = requireStart(start);
    return brewDay(steps, additions, boilMinutes).map((event) => {
      const { what, amount, caution } = timelineWords(event, boilMinutes, context);
      return [clockAt(begin, event.minute), event.boilMinute ?? "", what, amount, caution];
    });
  },
});
