import { boilOffLPerHour } from "../../core/heat/boil-off";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { optional, percent, units } from "../vocabulary";
import { power } from "./warm";

export const heatBoilOff = describeFunction({
  id: "HEAT.BOILOFF",
  summary: "How much water boils away in an hour with the power of your heater.",
  parameters: {
    power,
    efficiency: optional(
      percent(
        "Share of the power that makes steam, %: 85 when left out, for an electric element in an uncovered kettle; 30 to 45 for gas under one.",
        { limits: { above: 1, atMost: 100 }, typical: 85, hint: percentHint },
      ),
      85,
    ),
    units,
  },
  result: { kind: "number", quantity: "volumePerHour", doc: "Water boiled away in an hour, as measured cold." },
  equation: "L/h = 3600 × power × efficiency / 2257 kJ/kg / 0.9982 kg/L",
  sources: [
    { cite: "NIST/ASME Steam Properties, NISTIR 5078", where: "heat of evaporation 2257 kJ/kg at 100 °C" },
    { cite: "common practice", where: "efficiencies, from memory" },
  ],
  examples: [
    {
      arguments: [2.4, 83.18],
      value: 3.186,
      tolerance: 0.01,
      from: "Cambridge A level physics 9702, June 2012, paper 41: 106 g in 2 minutes at 2.40 kW, of which 404 W are lost",
    },
    { arguments: [3, null, "us"], value: 1.076, tolerance: 0.002, from: "worked by hand: 3600 × 2.55 / 2257 / 0.9982 = 4.0746 L" },
  ],
  cautions: [
    "Turn the power down to what rolls gently, and stay with the kettle: boiling wort foams over and scalds, and steam burns.",
    "Steam wets a room: boil under a hood or outdoors; gas only with fresh air (carbon monoxide).",
    "Learn your kettle's own figure by boiling plain water for an hour; lid and wind change it.",
  ],
  compute: ({ power: kilowatts, efficiency }) => boilOffLPerHour(kilowatts, efficiency),
});
