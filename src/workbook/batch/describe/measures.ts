import { ebcFromLovibond, lovibondFromEbc } from "../../../core/wort/colour-scales";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import type { Measure } from "./field";

/** A number of one unit system in the other, exactly. */
export function converted(measure: Measure | undefined, value: number, from: UnitSystem, to: UnitSystem): number {
  if (measure === undefined || from === to) return value;
  // By the maltsters' line; 0 is what gives no colour, such as sugar.
  if (measure === "maltColour") return to === "us" ? lovibondFromEbc(value) : ebcFromLovibond(value);
  return quantity(measure).fromCore(quantity(measure).toCore(value, from), to);
}

export const inCore = (measure: Measure, value: number, units: UnitSystem): number =>
  measure === "maltColour" ? value : quantity(measure).toCore(value, units);

export function unitOf(measure: Measure | undefined, units: UnitSystem): string {
  if (measure === undefined) return "";
  if (measure === "maltColour") return units === "us" ? "°L" : "EBC";
  return quantity(measure).unit[units];
}

/**
 * What a scale, a jug and a thermometer of a home brewery can tell apart, and what the batch sheet shows (common
 * practice). Steps in the unit of each system.
 */
const steps: Partial<Record<Measure, Readonly<Record<UnitSystem, number>>>> = {
  volume: { metric: 0.01, us: 0.01 },
  volumePerHour: { metric: 0.01, us: 0.01 },
  absorption: { metric: 0.01, us: 0.01 },
  mass: { metric: 0.01, us: 0.01 },
  temperature: { metric: 1, us: 1 },
  altitude: { metric: 1, us: 1 },
  flow: { metric: 0.1, us: 0.1 },
  grams: { metric: 0.1, us: 0.1 },
  concentration: { metric: 1, us: 1 },
  bottleVolume: { metric: 1, us: 0.1 },
};

export function rounded(measure: Measure | undefined, value: number, units: UnitSystem): number {
  const step = measure && steps[measure]?.[units];
  return step === undefined ? value : toStep(value, step);
}

/** The nearest whole number of steps, without the dust of binary fractions. */
export const toStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6));
