import type { QuantityName, UnitSystem } from "../../../functions/quantities";

/**
 * What a scale, a jug and a thermometer of a home brewery can tell apart, and what the batch sheet shows (common
 * practice). Steps in the unit of each system.
 */
const steps: Partial<Record<QuantityName, Readonly<Record<UnitSystem, number>>>> = {
  volume: { metric: 0.01, us: 0.01 },
  volumePerHour: { metric: 0.01, us: 0.01 },
  absorption: { metric: 0.01, us: 0.01 },
  mass: { metric: 0.01, us: 0.01 },
  temperature: { metric: 1, us: 1 },
  altitude: { metric: 1, us: 1 },
  flow: { metric: 0.1, us: 0.1 },
  bottleVolume: { metric: 1, us: 0.1 },
};

export function rounded(name: QuantityName, value: number, units: UnitSystem): number {
  const step = steps[name]?.[units];
  return step === undefined ? value : toStep(value, step);
}

/** Hops: whole grams or twentieths of an ounce; where that would be coarse, a pocket scale's tenth of a gram. */
export function hopStep(mass: number, units: UnitSystem): number {
  if (units === "us") return mass >= 0.35 ? 0.05 : 0.01;
  return mass >= 10 ? 1 : 0.1;
}

export const roundedHop = (mass: number, units: UnitSystem): number =>
  toStep(mass, hopStep(mass, units)) || (mass > 0 ? hopStep(mass, units) : 0);

/** Malt never rounds away to nothing. */
export const roundedMalt = (mass: number, units: UnitSystem): number => rounded("mass", mass, units) || (mass > 0 ? 0.01 : 0);

/** The nearest whole number of steps, without the dust of binary fractions. */
export const toStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6));
