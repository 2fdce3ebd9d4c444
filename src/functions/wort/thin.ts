import { waterToThinL } from "../../core/wort/thin";
import { describeFunction } from "../describe";
import { gravity, units, volume } from "../vocabulary";
import { sugarTable } from "./sugar-tables";

export const wortThin = describeFunction({
  id: "WORT.THIN",
  summary: "Water to add to wort that came out too strong.",
  parameters: {
    volume: volume("Volume of the wort now, cold (20 °C)."),
    gravity: gravity("Gravity of the wort now.", { typical: 1.06 }),
    target: gravity("Gravity wanted, not above the present one.", { typical: 1.05 }),
    units,
  },
  result: { kind: "number", quantity: "volume", doc: "Water to add, measured at 20 °C." },
  equation: "water = volume × SG × (P / P_target − 1): the sugar stays, the mass grows",
  sources: [{ cite: "mass balance", where: "sugar before = sugar after" }, sugarTable],
  examples: [
    {
      arguments: [20, 1.08297, 1.04003],
      value: 21.659,
      tolerance: 0.02,
      from: "worked by hand from NBS Table 114 (20 and 10 °Bx): 20 × 1.08297 × (20/10 − 1)",
    },
    {
      arguments: [5, 1.06111, 1.04003, "us"],
      value: 2.6528,
      tolerance: 0.004,
      from: "worked by hand from NBS Table 114 (15 and 10 °Bx): 5 × 1.06111 × 0.5",
    },
  ],
  cautions: ["Once the boil is over use water that has been boiled and cooled; hop bitterness is thinned as well."],
  compute: (values) => waterToThinL(values.volume, values.gravity, values.target),
});
