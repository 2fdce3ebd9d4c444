import { BrewingError } from "../brewing-error";
import { waterVapourBar } from "./local-air";

/**
 * Carbon dioxide in beer under pressure: one solubility for all of PACK. One volume is the gas that fills the beer's own
 * volume at 0 °C and 101.325 kPa: 1.977 g per litre of beer (density of the real gas; the ideal gas would give 1.964).
 */
export const gramsPerVolume = 1.977;

const gramsPerMole = 44.0095;
export const molesOfWaterPerL = 55.508;

/**
 * Henry's constant of carbon dioxide in water, in powers of 1/T: ln (H / MPa) = −6.8346 + 12817 / T − 3.7668e6 / T² +
 * 2.997e8 / T³ (J. J. Carroll, J. D. Slupsky and A. E. Mather, Journal of Physical and Chemical Reference Data 20, 1201,
 * 1991: from about 100 investigations, 0 to 160 °C, below 1 MPa).
 */
export const carbonDioxideInWater = [-6.8346, 12817, -3.7668e6, 2.997e8] as const;

/**
 * What an ordinary beer takes up beside water: alcohol and extract leave less room. Read from a keg table that fits the chart of the
 * American Society of Brewing Chemists and names no author, at 32 to 44 °F; at 60 and 70 °F that table has beer take up as much as
 * water, so that we err towards more pressure there.
 * Strong or sweet beer takes up less still.
 */
export const beerBesideWater = 0.95;

/** Where the solubility may be used, °C: up to a car in the sun. */
export const solubilityRange = { from: 0, to: 60, by: "the solubility of carbon dioxide used here" } as const;

const henryMPa = ([constant, ...powers]: readonly [number, ...number[]], kelvin: number): number =>
  Math.exp(powers.reduce((sum, power, index) => sum + power / kelvin ** (index + 1), constant));

/** Moles of a gas that a litre of beer takes up per bar of it, from its Henry's constant in water. */
export const molesPerLitreAndBar = (inWater: readonly [number, ...number[]], temperatureC: number): number =>
  (beerBesideWater * molesOfWaterPerL) / (10 * henryMPa(inWater, temperatureC + 273.15));

/** Grams of carbon dioxide that a litre of ordinary beer takes up per bar above it, on Henry's straight line. */
export const gramsPerLitreAndBar = (temperatureC: number): number => gramsPerMole * molesPerLitreAndBar(carbonDioxideInWater, temperatureC);

export const molesOfVolumes = (volumes: number): number => (volumes * gramsPerVolume) / gramsPerMole;

/**
 * By how much of itself the pressure of carbon dioxide is above Henry's straight line, for each volume in the beer: the gas
 * is not ideal (second virial coefficient −150 cm³/mol at 0 °C, −98 at 60 °C) and its own volume in the liquid counts (34
 * cm³/mol); I. R. Krichevsky and J. S. Kasarnovsky, Journal of the American Chemical Society 57, 2168, 1935, with
 * coefficients from memory, brought to one line. 0.8 % for each volume in a cellar.
 */
export const excessOfEachVolume = [0.0052, 0.00015] as const;
const excessPerVolume = (temperatureC: number): number => excessOfEachVolume[0] + excessOfEachVolume[1] * temperatureC;
export const realBar = (straightBar: number, volumes: number, temperatureC: number): number =>
  straightBar * (1 + excessPerVolume(temperatureC) * volumes);

/**
 * Gauge pressure in equilibrium with a beer under nothing but its own gas, as in a keg, bar; below 0 when the beer holds
 * less than under open gas.
 *
 * @param volumes carbon dioxide in the beer, volumes, above 0
 * @param temperatureC 0 to 60
 * @param atmosphereBar of the place: a gauge reads against it
 */
export function equilibriumGaugeBar(volumes: number, temperatureC: number, atmosphereBar: number): number {
  return (
    realBar((volumes * gramsPerVolume) / gramsPerLitreAndBar(temperatureC), volumes, temperatureC) +
    waterVapourBar(temperatureC) -
    atmosphereBar
  );
}

/**
 * Gauge pressure to set on a keg, bar; arguments as `equilibriumGaugeBar`.
 *
 * @throws BrewingError "impossible" when even an open vessel holds more than the volumes asked for
 */
export function kegGaugeBar(volumes: number, temperatureC: number, atmosphereBar: number): number {
  const gaugeBar = equilibriumGaugeBar(volumes, temperatureC, atmosphereBar);
  if (gaugeBar < 0) {
    const open = volumesAtGaugePressure(0, temperatureC, atmosphereBar).toFixed(2);
    throw new BrewingError(
      "impossible",
      `co2 is ${volumes.toFixed(2)} volumes, but at this temperature beer holds ${open} under no pressure at all; ask for more than that`,
    );
  }
  return gaugeBar;
}

/** Volumes of carbon dioxide that beer holds in equilibrium with a gauge pressure, bar: the inverse of `equilibriumGaugeBar`. */
export function volumesAtGaugePressure(gaugeBar: number, temperatureC: number, atmosphereBar: number): number {
  const gasBar = gaugeBar + atmosphereBar - waterVapourBar(temperatureC);
  const straightVolumes = (gasBar * gramsPerLitreAndBar(temperatureC)) / gramsPerVolume;
  const excess = excessPerVolume(temperatureC);
  return (Math.sqrt(1 + 4 * excess * straightVolumes) - 1) / (2 * excess);
}
