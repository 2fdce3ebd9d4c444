import { alcoholByMass, alcoholByVolume } from "./alcohol";
import { carbohydrateG, proteinShareOfExtract } from "./energy";
import { primedAlcoholG, primedAlcoholPercent } from "./primed";
import { realExtractPlato } from "./real-extract";

/** Energy of a gram (Regulation (EU) No 1169/2011, annex XIV): carbohydrate and protein have the same. */
export const labelFactors = { alcohol: { kj: 29, kcal: 7 }, food: { kj: 17, kcal: 4 } } as const;

export interface Label {
  readonly kj: number;
  readonly kcal: number;
  readonly carbohydrateG: number;
  readonly abvPercent: number;
}

/**
 * What is in 100 mL of a beer, with the energy factors of a European food label. Carbohydrate is the real extract less usual
 * figures for protein and ash, see `carbohydrateG`; fat and fibre are nought.
 *
 * @param primedVolumes carbon dioxide that priming sugar made, volumes
 * @throws BrewingError "impossible" when the gravity rose
 */
export function labelOf(originalGravity: number, finalGravity: number, primedVolumes: number): Label {
  const alcoholG = alcoholByMass(originalGravity, finalGravity) * finalGravity + primedAlcoholG(primedVolumes) / 10;
  const carbohydrate = carbohydrateG(originalGravity, finalGravity, 100);
  const foodG = carbohydrate + Math.max(0, proteinShareOfExtract * realExtractPlato(originalGravity, finalGravity) * finalGravity);
  const { alcohol, food } = labelFactors;
  return {
    kj: alcohol.kj * alcoholG + food.kj * foodG,
    kcal: alcohol.kcal * alcoholG + food.kcal * foodG,
    carbohydrateG: carbohydrate,
    abvPercent: alcoholByVolume(originalGravity, finalGravity) + primedAlcoholPercent(primedVolumes),
  };
}
