import { BrewingError } from "../brewing-error";
import { alphaMgPerL } from "./bitterness";
import { cooled, type Cooling } from "./cooling";
import { freshHops, heated } from "./isomerisation";
import { utilisationOfIso } from "./utilisation";

/** Hops in wort that no longer boils. */
export interface Stand {
  readonly massG: number;
  readonly alphaPercent: number;
  readonly volumeL: number;
  readonly gravity: number;
  /** Minutes that they boiled at 100 °C before. */
  readonly boiledMinutes: number;
}

/**
 * Bitterness that a stand or the chilling adds to what the hops have given before, IBU. Long boiled hops may lose some,
 * so it can fall a hair below 0.
 *
 * @throws BrewingError "impossible" when the wort is to warm up
 */
export function standIbu(hops: Stand, cooling: Cooling): number {
  if (cooling.toC > cooling.fromC) throw new BrewingError("impossible", "to is above from: the wort of a stand cools, or keeps its temperature");
  const before = heated(freshHops, hops.boiledMinutes, 100);
  const after = cooled(before, cooling);
  return alphaMgPerL(hops.massG, hops.alphaPercent, hops.volumeL) * utilisationOfIso(after.iso - before.iso, hops.gravity);
}
