import { coilKwPerK } from "../../core/heat/coil";
import { ArgumentProblem } from "../cell-error";
import { describeFunction } from "../describe";
import { messages } from "../messages";
import { list, number, temperature, units, volume } from "../vocabulary";

export const heatCoil = describeFunction({
  id: "HEAT.COIL",
  summary: "What your chiller passes on, learned from the log of one chilling: the coil of GYLE.HEAT.CHILL.",
  parameters: {
    minutes: list("minutes", "When each temperature was read, in minutes.", {
      limits: { atLeast: 0, atMost: 1440 },
      typical: 5,
      blank: "zero",
    }),
    temperatures: list("temperature", "Temperature of the stirred wort, beside the minutes; a row without one is skipped.", {
      limits: { atLeast: 1, atMost: 102 },
      typical: 60,
    }),
    volume: volume("Wort in the kettle, cold volume."),
    tapTemperature: temperature("Temperature of the cooling water as it comes from the tap.", { atLeast: 1, atMost: 60 }, 12),
    flow: number("flow", {
      doc: "Cooling water through the coil: time how long it takes to fill a bucket.",
      limits: { above: 0, atMost: 500 },
      typical: 6,
    }),
    units,
  },
  result: { kind: "number", quantity: "coil", doc: "Heat that the coil passes on for each degree, kW/K; 0.3 to 0.8 is usual." },
  equation: "r = slope of −ln(T − tap) over time; ε = r × volume / flow; coil = −ln(1 − ε) × flow × 4.18 kJ/(L K)",
  sources: [
    {
      cite: "D. Q. Kern, Process Heat Transfer, 1950, ch. 18",
      where: "batch cooling, coil in tank, solved for the coil; fit by least squares",
    },
  ],
  examples: [
    {
      arguments: [[[0], [11.457]], [[100], [20]], 20, 12, 6],
      value: 0.5,
      tolerance: 0.001,
      from: "worked by hand: the first example of GYLE.HEAT.CHILL the other way round",
    },
    {
      arguments: [[[0], [13.68]], [[212], [68]], 5, 60, 1.5, "us"],
      value: 0.5,
      tolerance: 0.001,
      from: "worked by hand: the second example of GYLE.HEAT.CHILL the other way round",
    },
  ],
  cautions: [
    "Drained, both ends open and no water on while it hangs in boiling wort; water on after flame-out, slowly. What runs out is steam and near boiling at first: the outlet hose fixed in a drain, hands clear of it.",
  ],
  compute: ({ minutes, temperatures, volume, tapTemperature, flow }) => {
    if (minutes.length !== temperatures.length) throw new ArgumentProblem("#VALUE!", messages.sameLength("minutes", "temperatures"));
    const readings = minutes.flatMap((time, index) => {
      const wortC = temperatures[index] ?? null;
      return time === null || wortC === null ? [] : [{ minutes: time, wortC }];
    });
    return coilKwPerK(readings, volume, tapTemperature, flow);
  },
});
