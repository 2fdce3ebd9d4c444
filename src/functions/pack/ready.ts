import { conditioningDays, conditioningRange } from "../../core/pack/ready";
import { describeFunction } from "../describe";
import { number, temperature, units } from "../vocabulary";

export const packReady = describeFunction({
  id: "PACK.READY",
  summary: "The day to chill a first bottle and taste it.",
  parameters: {
    packagedOn: number("date", {
      doc: "The date on which the bottles were filled.",
      limits: { atLeast: 32874, atMost: 73415 },
      typical: 46114,
      hint: () => "type a date from 1990 to 2100",
    }),
    temperature: temperature(
      "Where the bottles stand while they carbonate; 18 to 24 °C (65 to 75 °F) is usual.",
      { atLeast: 1, atMost: 45 },
      21,
      { covered: conditioningRange },
    ),
    units,
  },
  result: { kind: "number", quantity: "date", doc: "A date (format the cell as one)." },
  equation: "days = 10 × 2^((21 − °C) / 10), rounded up, at least 7",
  sources: [
    {
      cite: "common practice",
      where: "a first taste after one to two weeks at room temperature; halving for each 10 °C cooler, from memory",
    },
  ],
  examples: [
    { arguments: [46114, 21], value: 46124, tolerance: 0, from: "common practice: ten days at room temperature" },
    { arguments: [46114, 51.8, "us"], value: 46134, tolerance: 0, from: "worked by hand: 11 °C is 10 °C cooler, twice ten days" },
  ],
  cautions: [
    "One bottle tells for all: if it is flat, give the rest another week in the warm. If it gushes: do not open or move the others; keep people away and cool the room.",
  ],
  compute: ({ packagedOn, temperature }) => Math.floor(packagedOn) + conditioningDays(temperature),
});
