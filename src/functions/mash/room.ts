import { grainLPerKg, mashingOverCold } from "../../core/water/room";
import { describeFunction } from "../describe";
import { units } from "../vocabulary";
import { mashParameters } from "../water/mash";

export const mashRoom = describeFunction({
  id: "MASH.ROOM",
  summary: "How much room a mash takes in its tun.",
  parameters: { ...mashParameters, units },
  result: { kind: "number", quantity: "volume", doc: "Volume of the hot mash." },
  equation: `room = ${grainLPerKg} L/kg × grain + ${mashingOverCold} × water`,
  sources: [
    { cite: "C. S. Chang, Cereal Chem. 65, 1988, p. 13", where: "solids of grain have 1.45 to 1.47 kg/L" },
    { cite: "G. S. Kell, J. Chem. Eng. Data 20, 1975", where: "water at 85 °C takes 3.1 % more room than at 20 °C" },
  ],
  examples: [
    { arguments: [5, 15], value: 18.97, tolerance: 0.01, from: "worked by hand: 3.5 + 15.465" },
    { arguments: [10, 3.5, "us"], value: 4.447, tolerance: 0.002, from: "worked by hand: 4.536 kg × 0.7 = 0.839 US gal, + 3.6085" },
  ],
  cautions: ["Leave a tenth of the tun free for stirring: hot mash scalds."],
  compute: ({ grainMass, waterVolume }) => grainMass * grainLPerKg + waterVolume * mashingOverCold,
});
