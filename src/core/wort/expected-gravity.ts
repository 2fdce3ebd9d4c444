import { BrewingError } from "../brewing-error";
import { extractKg, type Fermentable } from "./fermentables";
import { concentrationOfGravity, gravityOfConcentration, strongestKgPerL } from "./solution";

/** Where the sugar tables of a hydrometer end. */
const strongestGravity = 1.2;

/**
 * Specific gravity 20/20 °C that a list of fermentables gives in a volume of wort: grain gives its extract at the brewer's
 * efficiency, extract and sugar give theirs whole, and what is then in a litre has the density of a sugar solution
 * (`density.ts`). Points that are added up (Palmer, How to Brew, ch. 3-4) come to the same below 1.050 and to 0.0007 more at
 * 1.100.
 *
 * @param volumeL whole volume of the wort at 20 °C, everything dissolved in it
 * @param efficiencyPercent share of the grain's extract that reaches the wort, 0 to 100 %
 * @throws BrewingError "uncovered" above 1.200, where the sugar tables end
 */
export function expectedGravity(fermentables: readonly Fermentable[], volumeL: number, efficiencyPercent: number): number {
  const { grain, dissolved } = extractKg(fermentables);
  const concentration = ((grain * efficiencyPercent) / 100 + dissolved) / volumeL;
  const gravity = gravityOfConcentration(Math.min(concentration, strongestKgPerL));
  if (gravity > strongestGravity + 1e-9) {
    throw new BrewingError(
      "uncovered",
      `fermentables come to ${gravity.toFixed(3)} in this volume${concentration > strongestKgPerL ? ", or more" : ""}; the sugar tables end at 1.200: check the masses, the volume and the units`,
    );
  }
  return gravity;
}

/**
 * The efficiency, %, that explains a measured gravity: what the grain gave over what it holds.
 *
 * @throws BrewingError "unsolvable" without mashed or steeped grain; "impossible" when the gravity is below what extract
 *   and sugar alone give, or above what all of the grain's extract could
 */
export function efficiencyPercent(fermentables: readonly Fermentable[], volumeL: number, gravity: number): number {
  const { grain, dissolved } = extractKg(fermentables);
  if (grain === 0)
    throw new BrewingError("unsolvable", "fermentables hold nothing that is mashed or steeped, so there is no efficiency to find");
  const fromGrain = concentrationOfGravity(gravity) * volumeL - dissolved;
  if (fromGrain < -1e-8) {
    throw new BrewingError(
      "impossible",
      `gravity ${gravity.toFixed(3)} is below the ${gravityOfConcentration(Math.min(dissolved / volumeL, strongestKgPerL)).toFixed(3)} that extract and sugar alone give; stir and measure again, or check the volume`,
    );
  }
  const efficiency = (100 * fromGrain) / grain;
  if (efficiency > 100 + 1e-6) {
    throw new BrewingError(
      "impossible",
      `gravity ${gravity.toFixed(3)} would take ${efficiency.toFixed(0)} % of the grain's extract; check the masses, the volume and the units`,
    );
  }
  return efficiency;
}
