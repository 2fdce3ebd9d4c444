import { bottleLimits, type VesselKind, type WorkingLimit } from "./bottle-kinds";
import { bottleGaugeBar } from "./closed-bottle";
import { equilibriumGaugeBar } from "./solubility";

/**
 * Carbonation that each 0.001 of gravity still to fall adds in a closed bottle, volumes: 0.49 by Balling's balance,
 * 0.55 for pure sugar; 0.5 is the rule of the trade.
 */
export const volumesPerPoint = 0.5;

/** From this share of a limit on, the margin is used up by the errors of weighing, measuring and the solubility (5 %). */
export const closeShare = 0.9;

/** What a hydrometer may be wrong by, in points: a line, and a hair for the binary fractions. Beer further above its end has not finished. */
export const readingError = 1 + 1e-6;

export interface BottleCheck {
  readonly verdict: "within" | "close" | "over";
  /** Carbonation in the end, with what fermentation still adds. */
  readonly volumes: number;
  /** Of these, from fermentation still to be done. */
  readonly fromFermentation: number;
  /** Pressure in the bottle at the warmest storage, not below 0. */
  readonly gaugeBar: number;
  readonly limit: WorkingLimit;
}

/** Where bottles or keg stand. */
export interface Standing {
  /** The warmest they will be, 0 to 60. */
  readonly temperatureC: number;
  /** Air pressure of the place. */
  readonly atmosphereBar: number;
  /** Free under the cap, % of what a bottle holds; a keg is filled with its own gas alone. */
  readonly headspacePercent: number;
}

/**
 * The one judgement that stands before every sugar and every pressure: what will be in the bottle at its warmest storage,
 * against what its kind may bear.
 *
 * In a bottle every point counts that may still fall, even one that is no more than the hydrometer's error; a keg has its
 * regulator and valve for that much, and its pressure stays the one to set.
 *
 * @param co2Volumes carbonation aimed at, volumes, above 0
 * @param pointsToFall gravity still to fall, in 0.001; 0 for finished beer
 */
export function checkBottle(
  co2Volumes: number,
  kind: VesselKind,
  pointsToFall: number,
  { temperatureC, atmosphereBar, headspacePercent }: Standing,
): BottleCheck {
  const limit: WorkingLimit = bottleLimits[kind];
  const fromFermentation = kind === "keg" && pointsToFall <= readingError ? 0 : volumesPerPoint * Math.max(0, pointsToFall);
  const volumes = co2Volumes + fromFermentation;
  const gaugeBar = Math.max(
    0,
    kind === "keg"
      ? equilibriumGaugeBar(volumes, temperatureC, atmosphereBar)
      : bottleGaugeBar(volumes, temperatureC, atmosphereBar, headspacePercent),
  );
  const share = Math.max(gaugeBar / limit.gaugeBar, limit.volumes === undefined ? 0 : volumes / limit.volumes);
  const verdict = share > 1 + 1e-9 ? "over" : share > closeShare + 1e-9 ? "close" : "within";
  return { verdict, volumes, fromFermentation, gaugeBar, limit };
}
