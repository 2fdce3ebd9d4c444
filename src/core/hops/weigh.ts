import { BrewingError } from "../brewing-error";
import { bitternessIbu, type Boil, type HopAddition } from "./bitterness";

/**
 * Mass of one hop addition, g, that brings so much bitterness: `bitternessIbu` turned round, which is a straight line in
 * the mass, so that the inverse is exact whatever the model.
 *
 * @param ibu above 0
 * @throws BrewingError "unsolvable" when hops at that time give none by the model
 */
export function massForBitternessG(ibu: number, hop: Omit<HopAddition, "massG">, boil: Boil): number {
  const ofOneGram = bitternessIbu({ ...hop, massG: 1 }, boil);
  if (ofOneGram < 1e-9)
    throw new BrewingError(
      "unsolvable",
      "minutes give no bitterness by this model, however many hops: let them boil, or say how the wort stands or chills",
    );
  return ibu / ofOneGram;
}
