import type { UnitSystem } from "../../../functions/quantities";
import { rounded, toStep } from "../describe/measures";

/** Hops: whole grams or twentieths of an ounce; where that would be coarse, a pocket scale's tenth of a gram. */
export function hopStep(mass: number, units: UnitSystem): number {
  if (units === "us") return mass >= 0.35 ? 0.05 : 0.01;
  return mass >= 10 ? 1 : 0.1;
}

export const roundedHop = (mass: number, units: UnitSystem): number =>
  toStep(mass, hopStep(mass, units)) || (mass > 0 ? hopStep(mass, units) : 0);

/** Malt never rounds away to nothing. */
export const roundedMalt = (mass: number, units: UnitSystem): number => rounded("mass", mass, units) || (mass > 0 ? 0.01 : 0);
