import { relativeIsomerisation } from "./isomerisation";
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

/**
 * Bitterness that one hop addition gives, IBU: milligrams of iso-alpha acid in a litre of beer. In a boil below
 * 100 °C the minutes count by the speed of isomerisation (see `relativeIsomerisation`).
 */
export function bitternessIbu(hop: HopAddition, boil: Boil): number {
  const minutesAt100C = hop.minutes * relativeIsomerisation(boil.boilsAtC);
  const alphaMgPerL = (hop.massG * 1000 * hop.alphaPercent) / 100 / boil.volumeL;
  return alphaMgPerL * hopUtilisation(minutesAt100C, boil.gravity, boil.model);
}
