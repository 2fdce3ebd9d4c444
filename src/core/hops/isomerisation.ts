/**
 * Rate at which alpha acid turns into iso-alpha acid, per minute: k1 = 7.9e11 exp(-11858 / T) (Malowicki and
 * Shellhammer, J. Agric. Food Chem. 53, 2005, 4434-4439; measured from 90 to 130 °C at pH 5.2, carried on below).
 */
export function isomerisationRatePerMinute(temperatureC: number): number {
  return 7.9e11 * Math.exp(-11858 / (temperatureC + 273.15));
}

/**
 * Speed of isomerisation against a boil at 100 °C: 0.65 at 95 °C, where water boils 1500 m up. Minutes in a cooler
 * boil count for so much less. Using the ratio to scale the minutes of a utilisation curve is our own step.
 */
export function relativeIsomerisation(temperatureC: number): number {
  return isomerisationRatePerMinute(temperatureC) / isomerisationRatePerMinute(100);
}
