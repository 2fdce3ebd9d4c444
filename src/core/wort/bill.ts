import { BrewingError } from "../brewing-error";
import { extractKg, type Fermentable } from "./fermentables";
import { concentrationOfGravity } from "./solution";

/** A row of a malt bill before its mass is known: its part of the whole mass, in any unit. */
export type BillShare = Omit<Fermentable, "massKg"> & { readonly share: number };

/**
 * Mass of each fermentable, kg, that together bring a volume of wort to a gravity: the extract in that wort over what a
 * kilogram of the mixture gives. `expectedGravity` turned round.
 *
 * @param shares above 0, parts of the mass of all; at least one
 * @param volumeL whole volume of the wort at 20 °C
 * @param targetGravity specific gravity 20/20 °C, above 1.000
 * @param efficiencyPercent share of the grain's extract that reaches the wort
 */
export function massesForGravity(
  shares: readonly BillShare[],
  volumeL: number,
  targetGravity: number,
  efficiencyPercent: number,
): number[] {
  const { grain, dissolved } = extractKg(shares.map((row) => ({ ...row, massKg: row.share })));
  const perShare = (grain * efficiencyPercent) / 100 + dissolved;
  if (perShare <= 0) throw new BrewingError("unsolvable", "shares give no extract at all, so no mass of them makes a wort");
  const extract = concentrationOfGravity(targetGravity) * volumeL;
  return shares.map(({ share }) => (share * extract) / perShare);
}
