import { BrewingError } from "../brewing-error";
import { heatKjPerLitreKelvin } from "./water-heat";

export interface ChillingReading {
  readonly minutes: number;
  readonly wortC: number;
}

/**
 * What a coil passes on, kW/K, from a log of one chilling: the slope of ln(wort - tap) over time, by least squares, is
 * the share of the difference that goes every minute; `chillingMinutes` turned round gives the coil.
 *
 * @param readings at least two at different times, wort above the tap temperature
 * @throws BrewingError "unsolvable" with too few readings; "impossible" when the wort did not cool, was no warmer than the
 *   tap water, or lost more heat than that much water can carry away
 */
export function coilKwPerK(readings: readonly ChillingReading[], volumeL: number, tapTemperatureC: number, flowLPerMinute: number): number {
  if (readings.some(({ wortC }) => wortC <= tapTemperatureC))
    throw new BrewingError("impossible", "temperatures must all be above tap_temperature");
  const effectiveness = (coolingRatePerMinute(readings, tapTemperatureC) * volumeL) / flowLPerMinute;
  if (effectiveness <= 0) throw new BrewingError("impossible", "temperatures do not fall: there is no chilling to learn from");
  if (effectiveness >= 1)
    throw new BrewingError(
      "impossible",
      "flow is too little: the wort cooled faster than that much water can carry away; check flow, volume and minutes",
    );
  return -Math.log(1 - effectiveness) * (flowLPerMinute / 60) * heatKjPerLitreKelvin;
}

function coolingRatePerMinute(readings: readonly ChillingReading[], tapTemperatureC: number): number {
  const points = readings.map(({ minutes, wortC }) => ({ x: minutes, y: Math.log(wortC - tapTemperatureC) }));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const x0 = mean(points.map(({ x }) => x));
  const y0 = mean(points.map(({ y }) => y));
  const spread = points.reduce((sum, { x }) => sum + (x - x0) ** 2, 0);
  if (points.length < 2 || spread === 0)
    throw new BrewingError("unsolvable", "minutes and temperatures need two readings at different times, better five or six");
  return -points.reduce((sum, { x, y }) => sum + (x - x0) * (y - y0), 0) / spread;
}
