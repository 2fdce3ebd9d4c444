/**
 * Rate at which alpha acid turns into iso-alpha acid, per minute: k1 = 7.9e11 exp(-11858 / T) (Malowicki and
 * Shellhammer, J. Agric. Food Chem. 53, 2005, 4434-4439; measured from 90 to 130 °C at pH 5.2, carried on below).
 */
export function isomerisationRatePerMinute(temperatureC: number): number {
  return 7.9e11 * Math.exp(-11858 / (temperatureC + 273.15));
}

/** Rate at which iso-alpha acid is lost again, per minute: k2 = 4.1e12 exp(-12994 / T) (the same paper and range). */
export function degradationRatePerMinute(temperatureC: number): number {
  return 4.1e12 * Math.exp(-12994 / (temperatureC + 273.15));
}

/**
 * Speed of isomerisation against a boil at 100 °C: 0.65 at 95 °C, where water boils 1500 m up. Minutes in a cooler
 * boil count for so much less. Using the ratio to scale the minutes of a utilisation curve is our own step.
 */
export function relativeIsomerisation(temperatureC: number): number {
  return isomerisationRatePerMinute(temperatureC) / isomerisationRatePerMinute(100);
}

/** Shares of the alpha acid put in. The two have the same molar mass, so these are shares of its mass as well. */
export interface HopAcids {
  readonly alpha: number;
  readonly iso: number;
}

export const freshHops: HopAcids = { alpha: 1, iso: 0 };

/**
 * The acids after some minutes at one temperature: alpha → iso-alpha → other products, both of first order, solved
 * exactly. After very long the iso-alpha acid falls again: at 100 °C from 149 minutes on.
 */
export function heated({ alpha, iso }: HopAcids, minutes: number, temperatureC: number): HopAcids {
  const k1 = isomerisationRatePerMinute(temperatureC);
  const k2 = degradationRatePerMinute(temperatureC);
  const alphaLeft = alpha * Math.exp(-k1 * minutes);
  const isoLeft = iso * Math.exp(-k2 * minutes);
  const isoMade = ((alpha * k1) / (k2 - k1)) * (Math.exp(-k1 * minutes) - Math.exp(-k2 * minutes));
  return { alpha: alphaLeft, iso: isoLeft + isoMade };
}
