import { expectedGravity } from "./expected-gravity";
import type { Fermentable } from "./fermentables";

export interface KettleBoil {
  /** Volumes at 20 °C before and after the boil, L: the second not above the first. */
  readonly beforeL: number;
  readonly afterL: number;
  readonly minutes: number;
  /** How long before the end what comes late goes in, 0 to `minutes`. */
  readonly lateMinutes: number;
}

/**
 * Average gravity in the kettle over the boil, by which hops give their bitterness: that of what is in from the beginning,
 * and for the last minutes of all. The volume falls evenly, so that each stretch counts with the volume in its middle.
 *
 * @throws BrewingError "uncovered" above 1.200
 */
export function kettleGravity(
  early: readonly Fermentable[],
  late: readonly Fermentable[],
  boil: KettleBoil,
  efficiencyPercent: number,
): number {
  const { beforeL, afterL, minutes, lateMinutes } = boil;
  const lastShare = late.length === 0 ? 0 : lateMinutes / minutes;
  const volumeAt = (share: number): number => beforeL + share * (afterL - beforeL);
  const first = expectedGravity(early, volumeAt((1 - lastShare) / 2), efficiencyPercent);
  if (lastShare === 0) return first;
  return (1 - lastShare) * first + lastShare * expectedGravity([...early, ...late], volumeAt(1 - lastShare / 2), efficiencyPercent);
}
