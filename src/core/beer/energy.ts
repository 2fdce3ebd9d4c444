import { alcoholByMass } from "./alcohol";
import { primedAlcoholG } from "./primed";
import { realExtractPlato } from "./real-extract";

/** Minerals of beer, g in 100 g: part of the extract, but no food energy (from memory, a usual figure). */
export const ashPercent = 0.1;
/** Protein as a share of the real extract (from memory, a usual figure for all-malt beer). */
export const proteinShareOfExtract = 0.07;
export const kilocaloriesPerGExtract = 4;
export const kilocaloriesPerGAlcohol = 6.9;
export const kilojoulesPerKilocalorie = 4.184;

/**
 * Food energy of a serving, kJ: 6.9 kcal per gram of alcohol and 4 kcal per gram of extract without ash (ASBC Methods
 * of Analysis, Beer-33), in 100 g, times the gravity of the beer for 100 mL.
 *
 * @param servingMl 0 to 5000 mL
 * @param primedVolumes carbon dioxide that priming sugar made, volumes
 * @throws BrewingError "impossible" when the gravity rose
 */
export function energyKj(originalGravity: number, finalGravity: number, servingMl: number, primedVolumes = 0): number {
  const extract = Math.max(0, realExtractPlato(originalGravity, finalGravity) - ashPercent);
  const kilocaloriesPer100G = kilocaloriesPerGAlcohol * alcoholByMass(originalGravity, finalGravity) + kilocaloriesPerGExtract * extract;
  const kilocaloriesPerMl = (kilocaloriesPer100G * finalGravity) / 100 + (kilocaloriesPerGAlcohol * primedAlcoholG(primedVolumes)) / 1000;
  return kilocaloriesPerMl * servingMl * kilojoulesPerKilocalorie;
}

/**
 * Carbohydrate of a serving, g: the real extract less ash and protein. Without a laboratory the protein is an estimate,
 * so the figure is good to about ±0.3 g in 100 mL.
 *
 * @throws BrewingError "impossible" when the gravity rose
 */
export function carbohydrateG(originalGravity: number, finalGravity: number, servingMl: number): number {
  const percent = realExtractPlato(originalGravity, finalGravity) * (1 - proteinShareOfExtract) - ashPercent;
  return (Math.max(0, percent) * finalGravity * servingMl) / 100;
}
