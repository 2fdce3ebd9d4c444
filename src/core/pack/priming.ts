import { BrewingError } from "../brewing-error";
import { bottleLimits, type BottleKind } from "./bottle-kinds";
import { gramsPerVolume } from "./solubility";

export const primingSugars = ["dextrose", "glucose", "sucrose", "malt extract", "honey"] as const;
export type PrimingSugar = (typeof primingSugars)[number];

/** Molar masses, g/mol (standard atomic weights). */
const co2Molar = 44.0095;
const glucoseMolar = 180.1559;
const glucoseMonohydrateMolar = 198.1712;
const sucroseMolar = 342.2965;

/** Gay-Lussac's balance: a hexose gives 2 carbon dioxide, sucrose and maltose 4. */
const hexoseYield = (2 * co2Molar) / glucoseMolar;
const sucroseYield = (4 * co2Molar) / sucroseMolar;

/**
 * Grams of carbon dioxide from a gram of sugar. Yeast growth is neglected, as in all priming tables.
 *
 * - dextrose: glucose as sold, with one water of crystallisation; glucose: the dry sugar.
 * - malt extract: dry, 70 % of it fermentable as maltose (0.65 to 0.75; from memory).
 * - honey: 38.2 % fructose and 31.3 % glucose, 7.3 % maltose and 1.3 % sucrose (490 American honeys, White et al.,
 *   USDA Technical Bulletin 1261, 1962, as printed in E. Crane, A Book of Honey, 1980, appendix 2, table 4).
 */
export const co2YieldOfSugar: Readonly<Record<PrimingSugar, number>> = {
  dextrose: (2 * co2Molar) / glucoseMonohydrateMolar,
  glucose: hexoseYield,
  sucrose: sucroseYield,
  "malt extract": 0.7 * sucroseYield,
  honey: (0.382 + 0.313) * hexoseYield + (0.073 + 0.013) * sucroseYield,
};

/**
 * Refuses a carbonation that the bottles do not bear. Nothing is known of temperature and finish here, so this is less
 * than the judgement of `checkBottle`; without a kind the bottles are taken as ordinary.
 *
 * @throws BrewingError "impossible"
 */
export function refuseForBottles(co2Volumes: number, kind: BottleKind | undefined): void {
  const { volumes: most } = bottleLimits[kind ?? "ordinary"];
  if (co2Volumes <= most + 1e-9) return;
  const wayOn =
    kind === undefined
      ? "or give as bottle, after units, a kind that bears more: heavy, thick, sparkling, plastic"
      : "or take stronger bottles";
  throw new BrewingError(
    "impossible",
    `co2 is ${co2Volumes.toFixed(2)} volumes; ${kind ?? "ordinary"} bottles bear ${most}: ask for less, ${wayOn} (GYLE.PACK.CHECK tells what will hold)`,
  );
}

/**
 * Priming sugar that brings a finished beer to the target carbonation, g.
 *
 * @param volumeL beer to be primed, above 0
 * @param co2Volumes target carbonation, volumes
 * @param residual carbon dioxide already in the beer, volumes
 * @throws BrewingError "impossible" when the beer already holds as much
 */
export function primingSugarG(volumeL: number, co2Volumes: number, residual: number, sugar: PrimingSugar): number {
  if (co2Volumes < residual) {
    throw new BrewingError(
      "impossible",
      `co2 is ${co2Volumes.toFixed(2)} volumes, but the beer already holds ${residual.toFixed(2)} from its fermentation: it needs no sugar`,
    );
  }
  return (volumeL * (co2Volumes - residual) * gramsPerVolume) / co2YieldOfSugar[sugar];
}
