import { standardPressurePa } from "../water/boiling";

/** Air pressure of a place in average weather, bar. */
export const atmosphereAtBar = (altitudeM: number): number => standardPressurePa(altitudeM) / 1e5;

/** Numbers of `waterVapourBar`. */
export const magnus = { bar: 0.0061094, factor: 17.625, aboveC: 243.04 } as const;

/**
 * Pressure of water vapour over beer, bar: the saturation over water, 6.1094 exp(17.625 t / (t + 243.04)) hPa (O. A.
 * Alduchov and R. E. Eskridge, Journal of Applied Meteorology 35, 601, 1996; 0.5 % low at 60 °C). Alcohol adds less than
 * 0.01 bar.
 */
export const waterVapourBar = (temperatureC: number): number =>
  magnus.bar * Math.exp((magnus.factor * temperatureC) / (temperatureC + magnus.aboveC));
