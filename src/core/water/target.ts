import { nonNegativeLeastSquares } from "../math/non-negative";
import { ionNames, pureWater, waterOf, withSalts, type SaltAddition, type SaltName, type Water } from "./ions";

export interface WaterPlan {
  /** Share of the water that is to be demineralised, 0 to 1. */
  readonly dilution: number;
  readonly additions: readonly SaltAddition[];
  readonly reached: Water;
}

const ions = (water: Water): number[] => ionNames.map((ion) => water[ion]);

/**
 * Salts, and demineralised water, that bring a water nearest to another: the sum of the squares of what the six ions
 * miss, in mg/L, is as small as it can be with no negative amount.
 */
export function waterPlan(base: Water, target: Water, volumeL: number, allowed: readonly SaltName[], dilutes: boolean): WaterPlan {
  const wanted = (from: Water): number[] => ionNames.map((ion) => target[ion] - from[ion]);
  const columns = allowed.map((salt) => ions(withSalts(pureWater, [{ salt, massG: 1 }], 1)));
  // Diluting is one more column: the base water, taken away.
  const [share = 0, ...freely] = nonNegativeLeastSquares(
    [dilutes ? ions(base).map((mg) => -mg) : [0, 0, 0, 0, 0, 0], ...columns],
    wanted(base),
  );
  const dilution = Math.min(1, share);
  // More than all of it cannot be taken away; the sum of squares has one bottom, so the best is then at all of it.
  const gramsPerL = share > 1 ? nonNegativeLeastSquares(columns, wanted(pureWater)) : freely;
  const additions = allowed.map((salt, index) => ({ salt, massG: (gramsPerL[index] ?? 0) * volumeL }));
  const left = waterOf((ion) => base[ion] * (1 - dilution));
  return { dilution, additions, reached: withSalts(left, additions, volumeL) };
}
