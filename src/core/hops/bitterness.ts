import { hopUtilisation, type UtilisationModel } from "./utilisation";

export interface HopAddition {
  readonly massG: number;
  /** Alpha acid, % of the mass. */
  readonly alphaPercent: number;
  /** Time in the boil. */
  readonly minutes: number;
}

export interface Boil {
  /** Finished wort that the bitterness is spread over, L. */
  readonly volumeL: number;
  /** Average specific gravity of the wort while it boils. */
  readonly gravity: number;
  readonly model: UtilisationModel;
  /** Temperature at which it boils, 80 to 102 °C. */
  readonly boilsAtC: number;
}

/** Alpha acid put into each litre of the finished wort, mg/L; mass 0 or more, alpha acid 0 to 30 %, volume above 0. */
export const alphaMgPerL = (massG: number, alphaPercent: number, volumeL: number): number => (massG * 1000 * alphaPercent) / 100 / volumeL;

/**
 * Bitterness that one hop addition gives, IBU: milligrams of iso-alpha acid in a litre of beer. Alpha acid times its
 * utilisation, whose sources stand at `hopUtilisation`.
 */
export function bitternessIbu(hop: HopAddition, boil: Boil): number {
  return alphaMgPerL(hop.massG, hop.alphaPercent, boil.volumeL) * hopUtilisation(hop.minutes, boil.gravity, boil.model, boil.boilsAtC);
}
