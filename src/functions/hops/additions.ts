import { bitternessIbu, type Boil } from "../../core/hops/bitterness";
import { utilisationModels } from "../../core/hops/utilisation";
import { ArgumentProblem } from "../cell-error";
import type { ArgumentValue, Source } from "../describe";
import { percentHint } from "../share-of-one";
import { choice, gravity, minutes, number, optional, smallMass, temperature, units, volume } from "../vocabulary";

export const alpha = number("percent", {
  doc: "Alpha acid printed on the packet, %; an empty cell counts as 0.",
  limits: { atLeast: 0, atMost: 30 },
  typical: 5.5,
  blank: "zero",
  hint: (typed) => (typed > 30 && typed <= 300 ? `alpha acid of ${typed}? write ${typed / 10}` : undefined),
});

const additions = {
  kind: "table",
  doc: "The hops, a row for each addition; a column with their names may stand before it.",
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

export const model = optional(choice("Which equation. tinseth is in widest use; rager gives late hops less and long boils more; kinetic goes by the chemistry and gives late hops less.", utilisationModels), "tinseth");

export const kettleGravity = gravity("Average gravity in the kettle while it boils; stronger wort takes up less.", { limits: { atLeast: 1, atMost: 1.2 }, typical: 1.045 });

export const boilsAt = optional(temperature("Temperature at which your water boils, for example from GYLE.WATER.BOILS; 100 °C (212 °F) when left out.", { atLeast: 80, atMost: 102 }, 100), 100);

/** What HOPS.IBU and HOPS.SHARE are asked with. */
export const bitternessParameters = {
  additions,
  volume: volume("Volume of the finished wort in the fermenter, top-up water included."),
  gravity: kettleGravity,
  model,
  boilsAt,
  units,
};

export const bitternessSources: readonly Source[] = [
  { cite: "G. Tinseth, 1995; J. J. Palmer, How to Brew, 1st ed.", where: "utilisation equation; Table 7" },
  { cite: "J. Rager, Zymurgy, special issue 1990", where: "utilisation table and the gravity above 1.050; the smooth curve from memory" },
  { cite: "M. G. Malowicki and T. H. Shellhammer, J. Agric. Food Chem. 53, 2005", where: "k1 = 7.9e11 exp(−11858 / T), k2 = 4.1e12 exp(−12994 / T) per minute; to scale minutes with k1, and to fit both to Tinseth's hour at 100 °C, are our own steps, not published" },
];

/** A share typed for a percentage would pass for weak hops: it is refused. */
export function refuseShare(argument: string, alphaPercent: number): void {
  if (alphaPercent > 0 && alphaPercent <= 0.3) throw new ArgumentProblem("#VALUE!", `${argument} is ${alphaPercent} %; it must be 0 % or above 0.3 % (${percentHint(alphaPercent)})`);
}

/** IBU of each addition, with the row it came from. */
export function bitternessOfEach(hops: ArgumentValue<typeof additions>, boil: Boil): { rowNumber: number; ibu: number }[] {
  return hops.map(({ mass, alpha, minutes, rowNumber }) => {
    refuseShare(`additions row ${rowNumber} (headings not counted): alpha`, alpha);
    return { rowNumber, ibu: bitternessIbu({ massG: mass, alphaPercent: alpha, minutes }, boil) };
  });
}
