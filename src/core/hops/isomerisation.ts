/** Rates of making and losing iso-alpha acid: A exp(−B / T), per minute, T in kelvin. */
export const isoMaking = { perMinute: 7.9e11, kelvin: 11858 } as const;
export const isoLosing = { perMinute: 4.1e12, kelvin: 12994 } as const;

/**
 * Rate at which alpha acid turns into iso-alpha acid, per minute: k1 = 7.9e11 exp(-11858 / T) (Malowicki and
 * Shellhammer, J. Agric. Food Chem. 53, 2005, 4434-4439; measured from 90 to 130 °C at pH 5.2, carried on below).
 */
export function isomerisationRatePerMinute(temperatureC: number): number {
  return isoMaking.perMinute * Math.exp(-isoMaking.kelvin / (temperatureC + 273.15));
}

/** Rate at which iso-alpha acid is lost again, per minute: k2 = 4.1e12 exp(-12994 / T) (the same paper and range). */
export function degradationRatePerMinute(temperatureC: number): number {
  return isoLosing.perMinute * Math.exp(-isoLosing.kelvin / (temperatureC + 273.15));
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
export function heated(acids: HopAcids, minutes: number, temperatureC: number): HopAcids {
  return heatedBy(acids, isomerisationRatePerMinute(temperatureC) * minutes, degradationRatePerMinute(temperatureC) * minutes);
}

/** The same from the rates times the minutes; where the temperature changes, from their integrals while their ratio is about steady. */
export function heatedBy({ alpha, iso }: HopAcids, made: number, lost: number): HopAcids {
  const isoMade = made === 0 ? 0 : ((alpha * made) / (lost - made)) * (Math.exp(-made) - Math.exp(-lost));
  return { alpha: alpha * Math.exp(-made), iso: iso * Math.exp(-lost) + isoMade };
}
