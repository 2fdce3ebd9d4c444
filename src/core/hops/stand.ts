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
 * Bitterness that a stand or the chilling adds to what the hops have given before, IBU. Hops that boiled for hours lose a
 * little instead; that counts as nothing added.
 *
 * @throws BrewingError "impossible" when the wort is to warm up
 */
export function standIbu(hops: Stand, cooling: Cooling): number {
  const before = heated(freshHops, hops.boiledMinutes, 100);
  const after = cooled(before, cooling);
  return Math.max(0, alphaMgPerL(hops.massG, hops.alphaPercent, hops.volumeL) * utilisationOfIso(after.iso - before.iso, hops.gravity));
}
