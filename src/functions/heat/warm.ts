import { warmingMinutes } from "../../core/heat/warm";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { number, optional, percent, temperature, units, volume } from "../vocabulary";

export const power = number("power", {
  doc: "What the heater draws: a kettle element 2 to 3 kW, a gas ring 3 to 15 kW.",
  limits: { above: 0, atMost: 100 },
  typical: 3,
  hint: (typed) => (typed > 100 ? `power is in kW: ${typed} W is ${typed / 1000}` : undefined),
});

export const heatWarm = describeFunction({
  id: "HEAT.WARM",
  summary: "How long a heater takes to warm water or wort.",
  parameters: {
    volume: volume("Water or wort, cold volume."),
    from: temperature("Temperature that you start from.", { atLeast: 1, atMost: 102 }, 15),
    to: temperature("Temperature that you want.", { atLeast: 1, atMost: 102 }, 68),
    power,
    efficiency: optional(
      percent(
        "Share of the power that ends up in the liquid, %: 90 when left out, for an electric element in the liquid; 35 to 50 for gas under a kettle.",
        {
          limits: { above: 1, atMost: 100 },
          typical: 90,
          hint: percentHint,
        },
      ),
      90,
    ),
    units,
  },
  result: { kind: "number", quantity: "minutes", doc: "Minutes; to the boil, not the boiling itself." },
  equation: "t = volume (L) × 4.18 kJ/(L K) × (to − from) / (power × efficiency) / 60",
  sources: [
    { cite: "NIST/ASME Steam Properties, NISTIR 5078", where: "enthalpy of water 83.9 kJ/kg at 20 °C, 419.2 kJ/kg at 100 °C" },
    { cite: "common practice", where: "efficiencies of elements and gas rings, from memory" },
  ],
  examples: [
    {
      arguments: [20, 10, 35, 1, 80],
      value: 43.75,
      tolerance: 0.3,
      from: "H. C. Verma, Concepts of Physics 2: 20 kg from 10 to 35 °C with 1000 W at 80 %, 44 minutes",
    },
    { arguments: [30, 65, 100, 3], value: 27.1, tolerance: 0.05, from: "worked by hand: 30 × 4.18 × 35 / (3 × 0.9) / 60" },
    { arguments: [5, 60, 212, 3, null, "us"], value: 41.24, tolerance: 0.05, from: "worked by hand: 18.927 × 4.18 × 84.44 / 2.7 / 60" },
  ],
  cautions: [
    "Stay with a kettle that nears the boil: wort foams up in seconds, and boiling liquid and steam scald.",
    "Gas burns outdoors or under a working flue with fresh air (carbon monoxide); an element must be covered with liquid before it is switched on.",
    "Electric heaters only on an earthed socket with a residual-current device (a GFCI), kept dry: dry hands, no cable in the wet.",
  ],
  compute: ({ volume, from, to, power, efficiency }) => warmingMinutes(volume, from, to, power, efficiency),
});
