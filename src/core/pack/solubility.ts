import { BrewingError } from "../brewing-error";

/**
 * Carbon dioxide in beer under pressure. One volume is the gas that fills the beer's own volume at 0 °C and
 * 101.325 kPa: 1.977 g per litre of beer (density of the real gas; the ideal gas would give 1.964).
 */
export const gramsPerVolume = 1.977;

/** Standard atmosphere, bar. */
export const atmosphereBar = 1.01325;

/** Where the solubility below may be used, °C: tables for beer end at 21 °C; beyond, the form carries on and was compared with water. */
export const solubilityRange = { from: 0, to: 45, by: "the solubility of carbon dioxide used here" } as const;

/**
 * Grams of carbon dioxide that a litre of ordinary beer takes up per bar of carbon dioxide above it.
 *
 * Henry's law with van 't Hoff's temperature: 10 exp(−10.73797 + 2617.25 / T) (coefficients in brewing use, from
 * memory). Within 4.2 % of the published keg table for 0 to 21 °C; at 25 to 45 °C 6 to 12 % below the solubility in
 * water (Sander 2023), so that it errs towards more pressure when beer is warm. Strong or sweet beer takes up less.
 */
export function gramsPerLitreAndBar(temperatureC: number): number {
  return 10 * Math.exp(-10.73797 + 2617.25 / (temperatureC + 273.15));
}

/**
 * Gauge pressure in equilibrium with a beer, bar; below 0 when the beer holds less than under open air.
 *
 * @param volumes carbon dioxide in the beer, volumes, above 0
 * @param temperatureC 0 to 45
 */
export function equilibriumGaugeBar(volumes: number, temperatureC: number): number {
  return (volumes * gramsPerVolume) / gramsPerLitreAndBar(temperatureC) - atmosphereBar;
}

/**
 * Gauge pressure to set on a keg, bar; arguments as `equilibriumGaugeBar`.
 *
 * @throws BrewingError "impossible" when even an open vessel holds more than the volumes asked for
 */
export function kegGaugeBar(volumes: number, temperatureC: number): number {
  const gaugeBar = equilibriumGaugeBar(volumes, temperatureC);
  if (gaugeBar < 0) {
    const open = volumesAtGaugePressure(0, temperatureC).toFixed(2);
    throw new BrewingError("impossible", `co2 is ${volumes.toFixed(2)} volumes, but at this temperature beer holds ${open} under no pressure at all; ask for more than that`);
  }
  return gaugeBar;
}

/** Volumes of carbon dioxide that beer holds in equilibrium with a gauge pressure, bar: the inverse of `equilibriumGaugeBar`. */
export function volumesAtGaugePressure(gaugeBar: number, temperatureC: number): number {
  return ((gaugeBar + atmosphereBar) * gramsPerLitreAndBar(temperatureC)) / gramsPerVolume;
}
