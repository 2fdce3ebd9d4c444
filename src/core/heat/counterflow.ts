import { BrewingError } from "../brewing-error";
import { heatKjPerLitreKelvin } from "./water-heat";

export interface Counterflow {
  readonly fromC: number;
  readonly tapTemperatureC: number;
  readonly wortLPerMinute: number;
  readonly waterLPerMinute: number;
  /** Heat that it passes on for each degree: its surface times its coefficient, kW/K. */
  readonly coilKwPerK: number;
}

/**
 * Temperature of the wort that leaves a chiller through which wort and water flow against each other: effectiveness by
 * number of transfer units, (1 − e) / (1 − r e) with e = exp(−N (1 − r)), N = UA over the wort's heat flow, r = wort over
 * water (W. M. Kays and A. L. London, Compact Heat Exchangers, 1964; from memory); N / (1 + N) where both flow alike.
 *
 * @throws BrewingError "impossible" when the water is no colder than the wort
 */
export function wortLeavesAtC({ fromC, tapTemperatureC, wortLPerMinute, waterLPerMinute, coilKwPerK }: Counterflow): number {
  if (tapTemperatureC >= fromC) throw new BrewingError("impossible", "tap_temperature must be below from: such water does not chill");
  const units = coilKwPerK / ((wortLPerMinute / 60) * heatKjPerLitreKelvin);
  const ratio = wortLPerMinute / waterLPerMinute;
  const share = Math.abs(ratio - 1) < 1e-9 ? units / (1 + units) : effectiveness(units, ratio);
  return fromC - share * (fromC - tapTemperatureC);
}

/** Written so that nothing overflows: of the two exponents the falling one. */
function effectiveness(units: number, ratio: number): number {
  const difference = units * (1 - ratio);
  if (difference >= 0) return -Math.expm1(-difference) / (1 - ratio * Math.exp(-difference));
  return -Math.expm1(difference) / (ratio - Math.exp(difference));
}
