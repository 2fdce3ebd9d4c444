import { BrewingError } from "../brewing-error";
import { degradationRatePerMinute, heatedBy, isomerisationRatePerMinute, type HopAcids } from "./isomerisation";

export interface Cooling {
  readonly fromC: number;
  /** Not above `fromC`. */
  readonly toC: number;
  readonly minutes: number;
  /** What the wort cools towards, below `toC`. */
  readonly surroundingsC: number;
}

/** Temperature of cooling wort, °C: it nears the surroundings exponentially (Newton's law of cooling). */
export function coolingTemperatureC({ fromC, toC, minutes, surroundingsC }: Cooling, minute: number): number {
  const left = (toC - surroundingsC) / (fromC - surroundingsC);
  return surroundingsC + (fromC - surroundingsC) * left ** (minutes === 0 ? 0 : minute / minutes);
}

/** Gauss's three points on 0 to 1, and their weights. */
export const gauss: readonly (readonly [place: number, weight: number])[] = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
];

/** So many that the shares are right to 0.00001, even where four hours of cooling begin at 102 °C. */
export const panels = 8;

/** Difference over its logarithm: the mean distance from the surroundings over equal steps of temperature. */
const logMean = (one: number, other: number): number => (Math.abs(one - other) < 1e-9 * one ? one : (one - other) / Math.log(one / other));

/**
 * The hop acids after the cooling. The way down is cut into panels of equal temperature, not of equal time: the rates fall
 * by a fixed share with each degree, so that three points in each panel suffice however long the tail is. In a panel the
 * mean rates count.
 *
 * @throws BrewingError "impossible" when the wort is to warm up
 */
export function cooled(acids: HopAcids, cooling: Cooling): HopAcids {
  const { fromC, toC, minutes, surroundingsC } = cooling;
  if (toC > fromC) throw new BrewingError("impossible", "to is above from: the wort of a stand cools, or keeps its temperature");
  const mean = logMean(fromC - surroundingsC, toC - surroundingsC);
  let now = acids;
  for (let panel = 0; panel < panels; panel += 1) {
    let [made, lost] = [0, 0];
    for (const [place, weight] of gauss) {
      const celsius = fromC + ((toC - fromC) * (panel + place)) / panels;
      const lasts = ((weight / panels) * minutes * mean) / (celsius - surroundingsC);
      made += lasts * isomerisationRatePerMinute(celsius);
      lost += lasts * degradationRatePerMinute(celsius);
    }
    now = heatedBy(now, made, lost);
  }
  return now;
}
