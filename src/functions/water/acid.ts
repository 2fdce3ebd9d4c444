import { acidMl, acidNames } from "../../core/water/acid";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { choice, number, omissible, optional, percent, units, volume } from "../vocabulary";

const alkalinity = (doc: string, typical: number) =>
  number("concentration", { doc, limits: { atLeast: 0, atMost: 1000 }, typical, blank: "waits" });

export const waterAcid = describeFunction({
  id: "WATER.ACID",
  summary: "Acid that brings the alkalinity of mash or sparge water down, never below pH 5.4.",
  parameters: {
    volume: volume("Water to treat."),
    alkalinity: alkalinity("Alkalinity now, as CaCO3, from a water report; or its bicarbonate × 0.82.", 150),
    targetAlkalinity: alkalinity("Target alkalinity, as CaCO3; 20 to 50 for pale beer, 0 for as low as pH 5.4.", 30),
    acid: optional(choice("The acid that you have.", acidNames), "lactic"),
    strength: omissible(
      percent(
        "Strength on the label, % by mass. Left out, 88 for lactic and 85 for phosphoric; with a weaker acid you then take too little, not too much.",
        { limits: { atLeast: 5, atMost: 90 }, typical: 88, hint: percentHint },
      ),
    ),
    units,
  },
  result: { kind: "number", quantity: "millilitres", doc: "Acid in mL, also with us units." },
  equation:
    "mL = volume (L) × (alkalinity − left) / 50.04 / (z × mol/L); left: the target, or what is there at pH 5.4 (about a tenth), the greater; pH = 6.38 + log(left / (1.076 alkalinity − left)); z: hydrogen ions from a molecule at that pH, lactic 0.97 to 1, phosphoric 1.02 to 1.5; mol/L: lactic 88 % 11.8, phosphoric 10 % 1.07, 85 % 14.6",
  sources: [
    {
      cite: "stoichiometry with atomic weights",
      where: "one equivalent of acid for each 50.04 mg of CaCO3; pKa of phosphoric acid and density of lactic acid from memory",
    },
    {
      cite: "L. N. Plummer and E. Busenberg, Geochim. Cosmochim. Acta 46, 1982, 1011",
      where: "pK1 of carbonic acid, 6.38 at 20 °C, their equation from memory; tap water taken to have pH 7.5, its carbon dioxide to stay",
    },
    {
      cite: "European Chemicals Agency, registration dossiers of lactic and phosphoric acid",
      where: "pKa 3.857 at 22.5 °C (Martin and Tartar); density by strength from ten handbooks",
    },
  ],
  examples: [
    {
      arguments: [20, 100, 0],
      value: 3.134,
      tolerance: 0.01,
      from: "worked by hand: 20 × 100 / 50.04 = 40.0 meq, of which 1.076 × 0.0947 stay at pH 5.4 less 0.08 of free acid: 36.0 / (0.972 × 11.81)",
    },
    {
      arguments: [20, 130, 30, "phosphoric", 10],
      value: 35.76,
      tolerance: 0.1,
      from: "worked by hand: pH = 6.38 + log(30 / (139.9 − 30)) = 5.82, z = 1 + 10^(5.82 − 7.2) = 1.040; 40.0 meq / (1.040 × 1.075)",
    },
    {
      arguments: [5, 150, 50, "lactic", 80, "us"],
      value: 3.603,
      tolerance: 0.03,
      from: "worked by hand: 18.93 × 100 / 50.04 = 37.8 meq, pH = 6.38 + log(50 / 111.4) = 6.03, z = 0.993; 37.8 / (0.993 × 10.57)",
    },
  ],
  cautions: [
    "Strong acid burns eyes and skin: goggles and gloves. Stir the acid into the water, never water into the acid. Keep it in its own bottle, away from children, bleach and sulfite.",
    "The label comes first: food grade only, and check the strength on it. A wrong strength is a wrong dose.",
    "Add half, stir, and measure the pH of the mash before you add the rest; grain and dark malt bring acid of their own.",
  ],
  compute: ({ volume, alkalinity: now, targetAlkalinity, acid, strength }) => acidMl(volume, now, targetAlkalinity, acid, strength),
});
