import { volumeToBoilOffL } from "../../core/wort/reduce";
import { describeFunction } from "../describe";
import { gravity, units, volume } from "../vocabulary";
import { sugarTable } from "./sugar-tables";

export const wortReduce = describeFunction({
  id: "WORT.REDUCE",
  summary: "Volume to boil off from wort that came out too weak.",
  parameters: {
    volume: volume("Volume of the wort now, as it would be cold (20 °C).", { typical: 28 }),
    gravity: gravity("Gravity of the wort now.", { typical: 1.045 }),
    target: gravity("Gravity wanted, not below the present one.", { typical: 1.055 }),
    units,
  },
  result: { kind: "number", quantity: "volume", doc: "Fall of the volume, cold measure." },
  equation: "boiled off = volume × [1 − SG P / (SG_target P_target)]: only water leaves",
  sources: [{ cite: "mass balance", where: "sugar before = sugar after" }, sugarTable],
  examples: [
    {
      arguments: [20, 1.04003, 1.06111],
      value: 6.932,
      tolerance: 0.01,
      from: "worked by hand from NBS Table 114 (10 and 15 °Bx): 20 × [1 − 1.04003 × 10 / (1.06111 × 15)]",
    },
    {
      arguments: [6, 1.04003, 1.04837, "us"],
      value: 1.04,
      tolerance: 0.005,
      from: "worked by hand from NBS Table 114 (10 and 12 °Bx): 6 × [1 − 1.04003 × 10 / (1.04837 × 12)]",
    },
  ],
  cautions: [
    "Boiling wort stands about 4 % higher than cold wort; longer boiling also deepens colour and bitterness.",
    "Stay with the kettle: boiling wort foams over and scalds.",
  ],
  compute: (values) => volumeToBoilOffL(values.volume, values.gravity, values.target),
});
