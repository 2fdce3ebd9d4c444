import { bitternessIbu, type Boil } from "../../core/hops/bitterness";
import { utilisationModels } from "../../core/hops/utilisation";
import { ArgumentProblem } from "../cell-error";
import type { ArgumentValue, Source } from "../describe";
import { percentHint } from "../share-of-one";
import { choice, gravity, minutes, number, optional, smallMass, temperature, units, volume } from "../vocabulary";

const alpha = number("percent", {
  doc: "Alpha acid printed on the packet, %; an empty cell counts as 0.",
  limits: { atLeast: 0, atMost: 30 },
  typical: 5.5,
  blank: "zero",
  hint: (typed) => (typed > 30 && typed <= 300 ? `alpha acid of ${typed}? write ${typed / 10}` : undefined),
});

const additions = {
  kind: "table",
  doc: "The hops, a row for each addition; a first column with their names may be selected with it.",
  columns: {
    mass: smallMass("Mass of the hops."),
    alpha,
    minutes: minutes("Minutes that they boil; an empty cell counts as 0.", { limits: { atLeast: 0, atMost: 240 } }),
  },
  layouts: [
    ["mass", "alpha", "minutes"],
    [null, "mass", "alpha", "minutes"],
  ],
} as const;

export const model = optional(choice("tinseth, or rager, which gives late hops less and long boils more.", utilisationModels), "tinseth");

export const kettleGravity = gravity("Average gravity in the kettle while it boils; stronger wort takes up less.", { limits: { atLeast: 1, atMost: 1.2 }, typical: 1.045 });

/** What HOPS.IBU and HOPS.SHARE are asked with. */
export const bitternessParameters = {
  additions,
  volume: volume("Volume of the finished wort in the fermenter, top-up water included."),
  gravity: kettleGravity,
  model,
  boilsAt: optional(temperature("Temperature at which your water boils, for example from GYLE.WATER.BOILS; 100 °C (212 °F) when left out.", { atLeast: 80, atMost: 102 }, 100), 100),
  units,
};

export const bitternessSources: readonly Source[] = [
  { cite: "G. Tinseth, 1995; J. J. Palmer, How to Brew, 1st ed.", where: "utilisation equation; Table 7" },
  { cite: "J. Rager, Zymurgy, special issue 1990", where: "utilisation table and the gravity above 1.050; the smooth curve from memory" },
  { cite: "M. G. Malowicki and T. H. Shellhammer, J. Agric. Food Chem. 53, 2005", where: "k1 = 7.9e11 exp(−11858 / T); scaling the minutes with it is our own step" },
];

/** IBU of each addition, with the row it came from. A share typed for a percentage would pass for weak hops: it is refused. */
export function bitternessOfEach(hops: ArgumentValue<typeof additions>, boil: Boil): { rowNumber: number; ibu: number }[] {
  return hops.map(({ mass, alpha, minutes, rowNumber }) => {
    if (alpha > 0 && alpha <= 0.3) {
      throw new ArgumentProblem("#VALUE!", `additions row ${rowNumber} (headings not counted): alpha ${alpha} % looks like a share of 1; ${percentHint(alpha)}`);
    }
    return { rowNumber, ibu: bitternessIbu({ massG: mass, alphaPercent: alpha, minutes }, boil) };
  });
}
