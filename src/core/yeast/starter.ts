import { BrewingError } from "../brewing-error";
import { waterKgPerL20C } from "../wort/density";
import { platoFromGravity } from "../wort/plato";

/** What a pack of 100 × 10⁹ cells grows to in a litre of wort, 10⁹ cells, and how that climbs with the litres. */
export const cellsAtOneLitre = 152;
export const growthExponent = 0.43;

/** Litres for each 100 × 10⁹ cells put in that the table covers. */
export const fewestLitres = 0.5;
export const mostLitres = 8;

/** New cells that a gram of extract can feed, 10⁹: 0.0532 g of dry yeast (Balling's balance), 38 pg each (from memory). */
export const newCellsPerGram = 1.4;

/**
 * A culture that is stirred all the time grows twice as many new cells in the same wort: the cautious end of the two to
 * three times that C. White and J. Zainasheff (Yeast, 2010; from memory) found. Sugar sets the same limit to both.
 */
export const cultures = ["still", "stirred"] as const;
export type Culture = (typeof cultures)[number];
export const newCellsOfCulture: Readonly<Record<Culture, number>> = { still: 1, stirred: 2 };

/** The table calculated for one pack; larger and smaller amounts of yeast behave the same in as many times the wort. */
const grownTo = (litresPerPack: number): number => (cellsAtOneLitre / 100) * litresPerPack ** growthExponent;

/**
 * Volume of a starter, L, in which `cellsNow` grow to `cellsWanted` (10⁹ cells): 152 V^0.43 for a pack
 * of 100, a fit to the table of C. White and J. Zainasheff, Yeast, 2010 (0.5 to 8 L of wort of 1.036; the table from
 * memory, the fit within 3 % of it). Weak wort, under about 1.015, takes more for want of sugar. 0 when there are cells enough.
 *
 * @throws BrewingError "uncovered" when the yeast would have to grow more than 3.7-fold (6.4-fold where it is stirred)
 */
export function starterVolumeL(cellsNow: number, cellsWanted: number, gravity: number, culture: Culture): number {
  const growth = cellsWanted / cellsNow;
  if (growth <= 1) return 0;
  const most = 1 + newCellsOfCulture[culture] * (grownTo(mostLitres) - 1);
  if (growth > most * (1 + 1e-9)) {
    const within = Math.floor(cellsNow * most);
    throw new BrewingError(
      "uncovered",
      `cells_wanted is ${growth.toFixed(1)} times cells_now; the table covers up to ${most.toFixed(1)} times: grow to ${within} billion first, then ask again from there (GYLE.YEAST.STEPS)`,
    );
  }
  const growthIfStill = 1 + (growth - 1) / newCellsOfCulture[culture];
  const litresPerPack = Math.max(fewestLitres, (growthIfStill / grownTo(1)) ** (1 / growthExponent));
  const extractGPerL = 10 * platoFromGravity(gravity) * gravity * waterKgPerL20C;
  return Math.max((litresPerPack * cellsNow) / 100, (cellsWanted - cellsNow) / (newCellsPerGram * extractGPerL));
}
