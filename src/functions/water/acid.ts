import { acidMl, acidNames } from "../../core/water/acid";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { choice, number, omissible, optional, percent, units, volume } from "../vocabulary";

const alkalinity = (doc: string, typical: number) => number("concentration", { doc, limits: { atLeast: 0, atMost: 1000 }, typical, blank: "waits" });

export const waterAcid = describeFunction({
  id: "WATER.ACID",
  summary: "Acid that brings the alkalinity of mash or sparge water down.",
  parameters: {
    volume: volume("Water to treat."),
    alkalinity: alkalinity("Alkalinity now, as CaCO3, from a water report; or its bicarbonate × 0.82.", 150),
    targetAlkalinity: alkalinity("Alkalinity wished for, as CaCO3; 20 to 50 for pale beer.", 30),
    acid: optional(choice("The acid that you have.", acidNames), "lactic"),
    strength: omissible(percent("Strength on the label, % by mass. Left out, 88 for lactic and 85 for phosphoric; with a weaker acid you then take too little, not too much.", { limits: { atLeast: 5, atMost: 90 }, typical: 88, hint: percentHint })),
    units,
  },
  result: { kind: "number", quantity: "millilitres", doc: "Acid in mL, also with us units." },
  equation: "mL = volume (L) × (alkalinity − target) / 50.04 / (equivalents per mole at pH 5.4 × mol/L); equivalents: lactic 0.972, phosphoric 1.015; mol/L: lactic 88 % 11.8, phosphoric 10 % 1.07, 85 % 14.6",
  sources: [
    { cite: "stoichiometry with atomic weights", where: "one equivalent of acid for each 50.04 mg of CaCO3; pKa of phosphoric acid and density of lactic acid from memory" },
    { cite: "European Chemicals Agency, registration dossiers of lactic and phosphoric acid", where: "pKa 3.857 at 22.5 °C (Martin and Tartar); density by strength from ten handbooks" },
  ],
  examples: [
    { arguments: [20, 100, 0], value: 3.48, tolerance: 0.01, from: "worked by hand: 20 × 100 / 50.04 = 40.0 meq; 40.0 / (0.972 × 11.81)" },
    { arguments: [20, 130, 30, "phosphoric", 10], value: 36.6, tolerance: 0.1, from: "worked by hand: 40.0 meq / (1.015 × 1.075)" },
    { arguments: [5, 150, 50, "lactic", 80, "us"], value: 3.68, tolerance: 0.03, from: "worked by hand: 18.93 × 100 / 50.04 = 37.8 meq; 37.8 / (0.972 × 10.57)" },
  ],
  cautions: [
    "Strong acid burns eyes and skin: goggles and gloves. Stir the acid into the water, never water into the acid. Keep it in its own bottle, away from children, bleach and sulfite.",
    "The label comes first: food grade only, and check the strength on it. A wrong strength is a wrong dose.",
    "Add half, stir, and measure the pH of the mash before you add the rest; grain and dark malt bring acid of their own.",
  ],
  compute: ({ volume, alkalinity: now, targetAlkalinity, acid, strength }) => acidMl(volume, now, targetAlkalinity, acid, strength),
});
