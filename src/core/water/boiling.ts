/** Numbers of `standardPressurePa`. */
export const standardAir = { pascal: 101325, kelvinPerM: 0.0065, kelvin: 288.15, power: 5.25588 } as const;

/**
 * Air pressure at an altitude, Pa: the International Standard Atmosphere (ISO 2533:1975; 288.15 K and 101325 Pa at sea
 * level, 6.5 K colder every 1000 m). Weather moves it by some ±2 %, which is ±0.5 K in the boiling temperature.
 *
 * @param altitudeM -500 to 11000 m
 */
export function standardPressurePa(altitudeM: number): number {
  return standardAir.pascal * (1 - (standardAir.kelvinPerM * altitudeM) / standardAir.kelvin) ** standardAir.power;
}

/** Coefficients n1 to n10 of the saturation line (IAPWS R7-97(2012), Table 34). */
const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7, 0.1491510861353e2,
  -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

/**
 * Temperature at which water boils under a pressure, °C: the backward equation of the industrial formulation of 1997
 * (IAPWS R7-97(2012), equation 31; its Table 36 is met to 1e-6 K).
 *
 * @param pressurePa 611.2 Pa to 22.06 MPa
 */
export function boilingTemperatureC(pressurePa: number): number {
  const beta = (pressurePa / 1e6) ** 0.25;
  const e = beta ** 2 + n3 * beta + n6;
  const f = n1 * beta ** 2 + n4 * beta + n7;
  const g = n2 * beta ** 2 + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  return (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2 - 273.15;
}

/**
 * Temperature at which water boils at an altitude in average weather, °C; 99.97 at sea level. Wort boils 0.1 to 0.4 K
 * higher for its sugar.
 */
export function waterBoilsAtC(altitudeM: number): number {
  return boilingTemperatureC(standardPressurePa(altitudeM));
}
