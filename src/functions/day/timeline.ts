import { clockAt, requireStart } from "../../core/day/clock";
import { brewDay } from "../../core/day/schedule";
import type { WhenAdded } from "../../core/hops/places";
import { describeFunction } from "../describe";
import { boilLimits, choice, minutes, number, omissible, optional, temperature, units } from "../vocabulary";
import { hops, steps } from "./tables";
import { timelineWords } from "./timeline-words";

export const dayTimeline = describeFunction({
  id: "DAY.TIMELINE",
  summary: "The brew day by the clock: when to do what, how much, and what to beware of.",
  parameters: {
    start: number("date", {
      doc: "When you begin: a date with its time, or a time of day such as 9:00.",
      limits: { above: 0, atMost: 73415 },
      typical: 0.375,
      hint: () => "type a time such as 9:00, or a date with its time",
    }),
    steps,
    hops,
    boilMinutes: optional(minutes("How long the wort boils.", { limits: { atLeast: 1, atMost: 300 }, blank: "missing" }), 60),
    units,
    boil: optional(
      choice("boil, also when left out; or no boil where the wort is only heated: then boil_minutes counts for nothing.", [
        "boil",
        "no boil",
      ]),
      "boil",
    ),
    standTemperature: omissible(
      temperature(
        "Without it, the line of the stand says no temperature. At which hot wort is kept for hops after flame-out.",
        { atLeast: 20, atMost: 102 },
        80,
      ),
    ),
    standMinutes: optional(minutes("How long that stand lasts. 0 when left out.", { limits: boilLimits, typical: 20 }), 0),
    standAfter: optional(
      minutes("How long it takes from flame-out down to that temperature. 0 when left out.", {
        limits: boilLimits,
        typical: 5,
      }),
      0,
    ),
    longerHops: optional(
      choice(
        "What becomes of hops that are to boil longer than the boil lasts. refuse, also when left out: an error says so; or begin: they go in as the boil begins, without a boil at flame-out.",
        ["refuse", "begin"],
      ),
      "refuse",
    ),
  },
  result: {
    kind: "grid",
    doc: "One row for each thing to do. The first column is a date with its time (format the cells as time), the second the minutes into the boil. Dry hops stand last and have no time: they are for another day.",
    columns: ["time", "minutes into the boil", "what to do", "amount", "caution"],
  },
  equation:
    "boil begins = start + minutes of the steps before; addition = boil begins + boil_minutes − minutes left, for a step at most boil_minutes; chilling = flame-out + 1 if hops go in there + stand_after + stand_minutes",
  sources: [
    {
      cite: "common practice",
      where:
        "additions are counted by the minutes left in the boil; the clock starts when the wort boils; hops at flame-out are stirred in before the chilling begins",
    },
  ],
  examples: [
    {
      arguments: [
        0.375,
        [
          ["Heat the water", "before", 30, ""],
          ["Cool the wort", "after", 30, "Sanitise first."],
        ],
        [["Cascade", 28, "", 60]],
        60,
      ],
      value: [
        [0.375, "", "Heat the water", "", ""],
        [
          0.375 + 30 / 1440,
          0,
          "Boil begins: start the 60-minute clock",
          "",
          "Stay with it: foam can boil over in seconds. Lid off, heat down.",
        ],
        [0.375 + 30 / 1440, 0, "Add Cascade", "28 g", "Hops make the boil rise: turn the heat down, add them slowly."],
        [0.4375, 60, "Flame out: the boil is over", "", "Gas or power off first. From here only sanitised things touch it."],
        [0.4375, "", "Cool the wort", "", "Sanitise first."],
        [0.4375 + 30 / 1440, "", "Brew day done", "", ""],
      ],
      tolerance: 1e-9,
      from: "worked by hand: 9:00, boil from 9:30 to 10:30, done at 11:00",
    },
    {
      arguments: [
        46114.5,
        [["Stir in the rest of the extract", "boil", 15, "Heat off until it is dissolved: it scorches."]],
        [["Fuggle", 1, 0]],
        30,
        "us",
      ],
      value: [
        [46114.5, 0, "Boil begins: start the 30-minute clock", "", "Stay with it: foam can boil over in seconds. Lid off, heat down."],
        [46114.5 + 15 / 1440, 15, "Stir in the rest of the extract", "", "Heat off until it is dissolved: it scorches."],
        [46114.5 + 30 / 1440, 30, "Flame out: the boil is over", "", "Gas or power off first. From here only sanitised things touch it."],
        [46114.5 + 30 / 1440, 30, "Add Fuggle", "1.00 oz", "Flame is out: stir them in gently, then chill. It still scalds."],
        [46114.5 + 31 / 1440, "", "Brew day done", "", ""],
      ],
      tolerance: 1e-9,
      from: "worked by hand: noon, step at 12:15, hops at flame-out 12:30, a minute to stir them in",
    },
    {
      arguments: [
        0.5,
        [
          ["Chiller in", "boil", 15],
          ["Cool the wort", "after", 30],
        ],
        [
          ["Chinook", 50, "stand"],
          ["Perle", 20, "first wort"],
          ["Chinook", 40, "dry"],
          ["Saaz", 15, 5],
        ],
        10,
        null,
        null,
        80,
        20,
        5,
      ],
      value: [
        [0.5, "", "First wort: Perle into the kettle", "20 g", "Before it boils. They stay in: expect more foam when the boil begins."],
        [0.5, 0, "Boil begins: start the 10-minute clock", "", "Stay with it: foam can boil over in seconds. Lid off, heat down."],
        [0.5, 0, "Chiller in", "", ""],
        [0.5 + 5 / 1440, 5, "Add Saaz", "15 g", "Hops make the boil rise: turn the heat down, add them slowly."],
        [0.5 + 10 / 1440, 10, "Flame out: the boil is over", "", "Gas or power off first. From here only sanitised things touch it."],
        [
          0.5 + 10 / 1440,
          "",
          "Stand: cool to 80 °C, keep it 20 min",
          "",
          "Water on slowly: steam, scalding water first; keep clear. Off there, lid on.",
        ],
        [0.5 + 15 / 1440, "", "Add Chinook for the stand", "50 g", "Still scalding. Push them under with a long, sanitised spoon; lid on."],
        [0.5 + 35 / 1440, "", "Cool the wort", "", ""],
        [0.5 + 65 / 1440, "", "Brew day done", "", ""],
        ["", "", "Dry hops, another day: Chinook", "40 g", "Into the fermenter, not today. Sanitised; add slowly, beer can gush."],
      ],
      tolerance: 1e-9,
      from: "worked by hand: noon; the boil of 10 minutes has no 15, so the chiller goes in with it; at 12:15 it is at 80 °C, at 12:35 the stand is over",
    },
  ],
  cautions: [
    "A plan, not a promise: bring the times along by typing when the boil really began.",
    "Boiling wort scalds: keep children and pets away, wear shoes and gloves, never leave a burner alone.",
  ],
  compute: ({ start, steps, hops, boilMinutes, boil, standTemperature, standMinutes, standAfter, longerHops }, context) => {
    const begin = requireStart(start);
    const lasts = boil === "boil" ? boilMinutes : 0;
    const placed = (added: WhenAdded): WhenAdded => (longerHops === "begin" && typeof added === "number" ? Math.min(added, lasts) : added);
    const additions = (hops ?? []).map(({ hop, mass, minutes }) => ({ hop: hop ?? "", massG: mass, added: placed(minutes) }));
    return brewDay(steps, additions, lasts, { minutes: standMinutes, afterMinutes: standAfter }).map((event) => {
      const { what, amount, caution } = timelineWords(event, lasts, standTemperature, standMinutes, context);
      return [event.minute === undefined ? "" : clockAt(begin, event.minute), event.boilMinute ?? "", what, amount, caution];
    });
  },
});
