import type { Belief, Beliefs } from "../math/least-squares";
import type { KnownOfBeer, Steadiness } from "./steady";

/** A reading good to one line (0.001) of a hydrometer: standard uncertainty a/√3 (JCGM 100:2008, 4.3.7). */
export const readingUncertainty = 0.001 / Math.sqrt(3);

/** What a yeast's sheet and a mash lead one to expect is known to so much of the attenuation, as a standard deviation (our judgement: nine points either way, 19 times out of 20). */
const attenuationDeviation = 0.045;
/** Where no gravity is expected: what beers mostly come to, 57 to 93 % (our judgement). */
const usualAttenuation = { mean: 0.75, deviation: 0.09 } as const;
/** An original gravity that was given is good to a line; else the wort may have stood higher than the first reading (our judgement). */
const originalGiven = { above: 0, deviation: 0.001 } as const;
const originalUnread = { above: 0.002, deviation: 0.008 } as const;
/** Half way down an ale loses a quarter of its fall a day, a lager a tenth, give or take a factor of two and a half (our judgement). */
const usualSteepness = { mean: Math.log(0.22), deviation: 0.9 } as const;
/** Half of the fall is done some days after the readings begin: as good as unknown. */
const halfDayDeviation = 10;
/** Fermentations lie about Gompertz's curve, between the symmetric logistic and first order (our judgement). */
const usualShape = { mean: 0, deviation: 0.5 } as const;

export interface FinalBeforehand {
  readonly value: number;
  readonly deviation: number;
}

/** What is known of the final gravity before any curve: where the beer rests, that is it. */
export function finalBeforehand(state: Steadiness, upper: number, newest: number, { expectedGravity }: KnownOfBeer): FinalBeforehand {
  if (state === "steady" || state === "stalled") return { value: newest, deviation: readingUncertainty };
  const points = upper - 1;
  if (expectedGravity === undefined)
    return { value: 1 + (1 - usualAttenuation.mean) * points, deviation: usualAttenuation.deviation * points };
  return { value: expectedGravity, deviation: attenuationDeviation * points };
}

/** What is known of the five numbers of a curve before it is fitted, in their order. */
export function beliefsOf(upper: number, isGiven: boolean, final: FinalBeforehand, span: number): Beliefs {
  const original = isGiven ? originalGiven : originalUnread;
  return [
    belief(upper + original.above, original.deviation),
    belief(final.value, final.deviation),
    belief(usualSteepness.mean, usualSteepness.deviation),
    belief(span / 2, halfDayDeviation),
    belief(usualShape.mean, usualShape.deviation),
  ];
}

const belief = (value: number, deviation: number): Belief => ({ value, weight: 1 / deviation ** 2 });
