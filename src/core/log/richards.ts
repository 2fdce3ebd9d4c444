import type { Model } from "../math/least-squares";

/** A fermentation curve. */
export interface FermentationCurve {
  readonly upperGravity: number;
  readonly lowerGravity: number;
  /** Share of the whole fall that goes in a day, half way down: K, above 0. */
  readonly steepnessPerDay: number;
  /** Day on which half of the fall is done: H. */
  readonly halfDay: number;
  /** 1 is the symmetric logistic, 0 Gompertz's curve, -1 first order after a lag; the smaller, the longer the tail. */
  readonly shape: number;
}

/** (e^(shape × x) − 1) / shape, and what it comes to at Gompertz's shape of nought. */
const grown = (shape: number, x: number): number => (shape === 0 ? x : Math.expm1(shape * x) / shape);
/** ln(1 + shape × x) / shape, its inverse; Infinity where nothing is left of the logarithm. */
const shrunk = (shape: number, x: number): number => (shape === 0 ? x : shape * x <= -1 ? Infinity : Math.log1p(shape * x) / shape);

/** What the exponential is multiplied by, so that half is done on the day H: (2^shape − 1) / shape. */
const halfFactor = (shape: number): number => grown(shape, Math.LN2);

/** Rate of the exponential, per day: the slope half way down, K, is rate × (1 − 2^-shape) / (2 shape). */
const rateOf = (steepness: number, shape: number): number => (2 * steepness) / halfFactor(-shape);

/** Share of the fall that is done at `rate × (day − H)`. */
const shareDone = (along: number, shape: number): number => Math.exp(-shrunk(shape, halfFactor(shape) * Math.exp(-along)));

/**
 * Gravity on a day by the curve of F. J. Richards (J. Exp. Bot. 10, 1959, 290; from memory): the share of the fall that
 * is done is (1 + (2^s − 1) exp(−r (t − H)))^(−1/s). With the shape s = 1 it is the logistic by which R. A. Speers,
 * P. Rogers and B. Smith, J. Inst. Brew. 109 (2003) 229, describe fermentations; other shapes make it asymmetric.
 */
export function gravityOnDay({ upperGravity, lowerGravity, steepnessPerDay, halfDay, shape }: FermentationCurve, day: number): number {
  return upperGravity - (upperGravity - lowerGravity) * shareDone(rateOf(steepnessPerDay, shape) * (day - halfDay), shape);
}

/** Fall of gravity in a day where the curve is steepest: r (upper − lower) (1 + s)^(−1 − 1/s). */
export function steepestFallPerDay({ upperGravity, lowerGravity, steepnessPerDay, shape }: FermentationCurve): number {
  const steepest = Math.exp(-(1 + shape) * shrunk(shape, 1));
  return rateOf(steepnessPerDay, shape) * (upperGravity - lowerGravity) * steepest;
}

/** Day on which the curve comes within `distance` of its lower end; -Infinity when it never stood above that. */
export function dayWithin({ upperGravity, lowerGravity, steepnessPerDay, halfDay, shape }: FermentationCurve, distance: number): number {
  const done = 1 - distance / (upperGravity - lowerGravity);
  if (!(done > 0)) return -Infinity;
  const left = grown(shape, -Math.log(done));
  return halfDay - Math.log(left / halfFactor(shape)) / rateOf(steepnessPerDay, shape);
}

/** The five numbers in the order in which they are fitted: gravity, gravity, ln of a share per day, day, shape. */
export const asList = ({ upperGravity, lowerGravity, steepnessPerDay, halfDay, shape }: FermentationCurve): number[] => [
  upperGravity,
  lowerGravity,
  Math.log(steepnessPerDay),
  halfDay,
  shape,
];

/** The curve of five such numbers. */
export const asCurve = ([
  upperGravity = 1,
  lowerGravity = 1,
  lnSteepness = 0,
  halfDay = 0,
  shape = 1,
]: readonly number[]): FermentationCurve => ({
  upperGravity,
  lowerGravity,
  steepnessPerDay: Math.exp(lnSteepness),
  halfDay,
  shape,
});

/** A small step of the shape, for its slope. */
const step = 1e-5;

/** The curve as least squares wants it: its value and its slopes against the five numbers. */
export const richardsModel: Model = {
  value: (parameters, day) => gravityOnDay(asCurve(parameters), day),
  gradient: (parameters, day) => {
    const [upper = 1, lower = 1, lnSteepness = 0, halfDay = 0, shape = 1] = parameters;
    const fall = upper - lower;
    const steepness = Math.exp(lnSteepness);
    const rate = rateOf(steepness, shape);
    const along = rate * (day - halfDay);
    const done = shareDone(along, shape);
    const left = halfFactor(shape) * Math.exp(-along);
    const base = 1 + shape * left;
    // d done / d along: left × done^(1 + shape).
    const bend = done === 0 || base <= 0 ? 0 : (left * done) / base;
    const moved = (by: number): number => shareDone(rateOf(steepness, shape + by) * (day - halfDay), shape + by);
    return [
      1 - done,
      done,
      -fall * bend * (done === 0 ? 0 : along),
      fall * bend * rate,
      (-fall * (moved(step) - moved(-step))) / (2 * step),
    ];
  },
};
