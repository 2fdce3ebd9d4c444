import { platoFromGravity } from "../wort/plato";

/**
 * Yeast cells to pitch, billion (10⁹): rate × volume × extract (G. Fix and L. Fix, An Analysis of Brewing
 * Techniques, 1997: 0.75 million for each mL and °P for ale, 1.5 for lager).
 *
 * @param volumeL wort in the fermenter
 * @param gravity its specific gravity, above 1.0
 * @param rateMillionPerMlPlato million cells for each millilitre and degree Plato
 */
export function cellsToPitch(volumeL: number, gravity: number, rateMillionPerMlPlato: number): number {
  // A million cells in each of the thousand millilitres of a litre are a billion (10⁹).
  return rateMillionPerMlPlato * volumeL * platoFromGravity(gravity);
}

/**
 * Whole packs that hold at least the living cells wanted.
 *
 * @param cells cells wanted, in the unit of `cellsPerPack`
 * @param viabilityPercent share of the cells in a pack that is alive, above 0 to 100 %
 */
export function packsToPitch(cells: number, cellsPerPack: number, viabilityPercent: number): number {
  const packs = cells / ((cellsPerPack * viabilityPercent) / 100);
  // 180 cells out of packs with 60 must come to 3, whatever the last digit of the division says.
  return Math.ceil(packs - 1e-9);
}
