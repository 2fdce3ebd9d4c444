import { chillingMinutes } from "../../core/heat/chill";
import { describeFunction } from "../describe";
import { number, optional, temperature, units, volume } from "../vocabulary";

export const heatChill = describeFunction({
  id: "HEAT.CHILL",
  summary: "How long an immersion coil takes to chill the wort.",
  parameters: {
    volume: volume("Wort in the kettle, cold volume."),
    from: temperature("Temperature that you start from, usually boiling.", { atLeast: 1, atMost: 102 }, 100),
    to: temperature("Temperature that you want; it must be above the tap water.", { atLeast: 1, atMost: 102 }, 20),
    tapTemperature: temperature("Temperature of the cooling water as it comes from the tap.", { atLeast: 1, atMost: 60 }, 12),
    flow: number("flow", {
      doc: "Cooling water through the coil: time how long it takes to fill a bucket. 4 to 8 L (1 to 2 US gal) a minute is usual.",
      limits: { above: 0, atMost: 500 },
      typical: 6,
    }),
    coil: optional(
      number("coil", {
        doc: "Heat that the coil passes on for each degree, kW/K: 0.5 when left out; 0.3 for a small coil or still wort to 0.8 for a big one in stirred wort.",
        limits: { above: 0, atMost: 20 },
        typical: 0.5,
        hint: (typed) => (typed > 20 ? `coil is in kW/K: ${typed} W/K is ${typed / 1000}` : undefined),
      }),
      0.5,
    ),
    units,
  },
  result: { kind: "number", quantity: "minutes", doc: "Minutes with the wort stirred all the time; still wort takes much longer." },
  equation: "t = volume / (flow × ε) × ln((from − tap) / (to − tap)); ε = 1 − exp(−coil / (flow × 4.18 kJ/(L K)))",
  sources: [
    { cite: "D. Q. Kern, Process Heat Transfer, 1950, ch. 18", where: "batch cooling, coil in tank, non-isothermal cooling medium" },
    { cite: "common practice", where: "0.3 to 0.8 kW/K for immersion coils, from memory" },
  ],
  examples: [
    {
      arguments: [20, 100, 20, 12, 6],
      value: 11.457,
      tolerance: 0.002,
      from: "worked by hand: ε = 1 − exp(−0.5 / 0.418) = 0.6976; 20 / (6 × 0.6976) × ln(88 / 8)",
    },
    {
      arguments: [5, 212, 68, 60, 1.5, null, "us"],
      value: 13.68,
      tolerance: 0.005,
      from: "worked by hand: ε = 1 − exp(−0.5 / 0.3956) = 0.7175; 5 / (1.5 × 0.7175) × ln(152 / 8)",
    },
  ],
  cautions: [
    "Put the coil in for the last 15 to 20 minutes of the boil, or for all of a shorter one: boiling wort sanitises it. Drained and dry inside, with both ends open and no water on: water shut in or running would flash to steam, and running water stops the boil.",
    "Water on only after flame-out, and slowly: the first that comes out is steam and near boiling. Fix the outlet hose in a drain, away from people; keep hands and faces clear of both hoses.",
    "From flame-out on everything that touches the wort must be sanitised. Never hot wort into glass: it cracks and scalds.",
  ],
  compute: ({ volume, from, to, tapTemperature, flow, coil }) =>
    chillingMinutes(volume, from, to, { tapTemperatureC: tapTemperature, flowLPerMinute: flow, coilKwPerK: coil }),
});
