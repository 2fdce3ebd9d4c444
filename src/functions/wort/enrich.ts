import { massToEnrichKg } from "../../core/wort/enrich";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { gravity, optional, percent, units, volume } from "../vocabulary";
import { palmer } from "./fermentables";
import { sugarTable } from "./sugar-tables";

export const wortEnrich = describeFunction({
  id: "WORT.ENRICH",
  summary: "Malt extract or sugar to add to wort that came out too weak.",
  parameters: {
    volume: volume("Volume of the wort now, cold (20 °C)."),
    gravity: gravity("Gravity of the wort now.", { typical: 1.045 }),
    target: gravity("Gravity wanted, not below the present one.", { typical: 1.05 }),
    yield: optional(
      percent("Extract of the addition, % of its mass: dry malt extract 90 (when left out), liquid 78, sugar 100.", {
        limits: { above: 1, atMost: 100 },
        typical: 90,
        hint: percentHint,
      }),
      90,
    ),
    units,
  },
  result: {
    kind: "number",
    quantity: "mass",
    doc: "Mass to add; the volume grows by 0.62 L for each kg of sugar, by 0.65 L for each of dry extract (0.07 to 0.08 US gal/lb).",
  },
  equation: "mass = volume × SG × 0.9982 × (P_target − P) / (yield − P_target)",
  sources: [{ cite: "mass balance", where: "sugar before + sugar added = sugar after" }, sugarTable, palmer],
  examples: [
    {
      arguments: [20, 1.04003, 1.04837, 100],
      value: 0.4719,
      tolerance: 0.001,
      from: "worked by hand from NBS Table 114 (10 and 12 °Bx): 20 × 1.04003 × 0.9982 × 2 / 88",
    },
    {
      arguments: [5, 1.04003, 1.04837, null, "us"],
      value: 1.1107,
      tolerance: 0.002,
      from: "worked by hand: 18.927 L × 1.04003 × 0.9982 × 2 / 78 = 0.5038 kg",
    },
  ],
  cautions: ["Boil the addition for ten minutes or stir it into hot wort off the flame: extract sinks and scorches."],
  compute: (values) => massToEnrichKg(values.volume, values.gravity, values.target, values.yield),
});
