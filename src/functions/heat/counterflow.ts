import { wortLeavesAtC } from "../../core/heat/counterflow";
import { describeFunction } from "../describe";
import { number, optional, temperature, units } from "../vocabulary";

const flow = (doc: string, typical: number) => number("flow", { doc, limits: { above: 0, atMost: 500 }, typical });

export const heatCounterflow = describeFunction({
  id: "HEAT.COUNTERFLOW",
  summary: "How cold the wort comes out of a counter-flow or plate chiller.",
  parameters: {
    from: temperature("The wort that flows in, usually near boiling.", { atLeast: 1, atMost: 102 }, 95),
    tapTemperature: temperature("Temperature of the cooling water as it comes from the tap.", { atLeast: 1, atMost: 60 }, 12),
    wortFlow: flow("Wort through the chiller.", 2),
    flow: flow("Cooling water through the chiller, against the wort.", 6),
    coil: optional(
      number("coil", {
        doc: "Heat that it passes on for each degree, kW/K: 0.3 when left out; 0.2 for a short hose in hose to 1 for a good plate chiller.",
        limits: { above: 0, atMost: 20 },
        typical: 0.3,
        hint: (typed) => (typed > 20 ? `coil is in kW/K: ${typed} W/K is ${typed / 1000}` : undefined),
      }),
      0.3,
    ),
    units,
  },
  result: { kind: "number", quantity: "temperature", doc: "Temperature of the wort that comes out." },
  equation:
    "T = from − ε × (from − tap); ε = (1 − e) / (1 − r e), e = exp(−N (1 − r)), N = coil / (wort_flow × 4.18 kJ/(L K)), r = wort_flow / flow; ε = N / (1 + N) where r = 1",
  sources: [
    {
      cite: "W. M. Kays and A. L. London, Compact Heat Exchangers, 1964",
      where: "effectiveness and number of transfer units; from memory",
    },
    { cite: "common practice", where: "0.2 to 1 kW/K for chillers at home, from memory" },
  ],
  examples: [
    {
      arguments: [95, 12, 2, 6, 0.3],
      value: 26.3,
      tolerance: 0.1,
      from: "worked by hand: N = 0.3 / 0.13933 = 2.1531, r = 1/3, e = 0.2380; ε = 0.7620 / 0.9207 = 0.8277, 95 − 0.8277 × 83 = 26.3",
    },
    {
      arguments: [203, 53.6, 0.5, 0.5, 0.3, "us"],
      value: 99.2,
      tolerance: 0.1,
      from: "worked by hand: both 0.5 US gal/min, N = 2.276, ε = 0.6947; 203 − 0.6947 × 149.4 = 99.2",
    },
  ],
  cautions: [
    "Hoses with hot wort come off and scald: clamp them, and keep hands and faces clear. The cooling water comes out hot, too.",
    "Everything behind the chiller must be sanitised; so must the chiller itself: run boiling wort or hot water through for ten minutes, and rinse it clean right after use. Hops clog a plate chiller.",
  ],
  compute: ({ from, tapTemperature, wortFlow, flow: waterFlow, coil }) =>
    wortLeavesAtC({
      fromC: from,
      tapTemperatureC: tapTemperature,
      wortLPerMinute: wortFlow,
      waterLPerMinute: waterFlow,
      coilKwPerK: coil,
    }),
});
