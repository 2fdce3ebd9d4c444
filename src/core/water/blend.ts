import { BrewingError } from "../brewing-error";
import { waterOf, type Water } from "./ions";

/**
 * The ions of waters poured together, mg/L: each counts by its share. Linear in every ion and in alkalinity, not in pH.
 *
 * @throws BrewingError "impossible" when there is no water at all
 */
export function blendedWater(parts: readonly { readonly share: number; readonly water: Water }[]): Water {
  const whole = parts.reduce((sum, { share }) => sum + share, 0);
  if (whole <= 0) throw new BrewingError("impossible", "shares add up to nothing: at least one must be above 0");
  return waterOf((ion) => parts.reduce((sum, { share, water }) => sum + (share * water[ion]) / whole, 0));
}
