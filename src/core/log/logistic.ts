import type { Model } from "../math/least-squares";

/** The four numbers of a fermentation curve, in the order in which they are fitted. */
export interface FermentationCurve {
  readonly upperGravity: number;
  readonly lowerGravity: number;
  /** Steepness B, per day. */
  readonly steepnessPerDay: number;
  /** Day of the steepest fall M. */
  readonly middleDay: number;
}

/** Share of the fall that is still to come, 1 to 0. */
const shareLeft = (steepnessPerDay: number, middleDay: number, day: number): number => 1 / (1 + Math.exp(steepnessPerDay * (day - middleDay)));

/**
 * Gravity on a day: lower + (upper − lower) / (1 + exp(B (t − M))), the four-parameter logistic of R. A. Speers,
 * P. Rogers and B. Smith, J. Inst. Brew. 109 (2003) 229, which the paper writes for degrees Plato; gravity is nearly
 * proportional to them over one fermentation, and it is what the hydrometer shows.
 */
export function gravityOnDay({ upperGravity, lowerGravity, steepnessPerDay, middleDay }: FermentationCurve, day: number): number {
  return lowerGravity + (upperGravity - lowerGravity) * shareLeft(steepnessPerDay, middleDay, day);
}

/** Fall of gravity in a day where the curve is steepest: B (upper − lower) / 4. */
export function steepestFallPerDay({ upperGravity, lowerGravity, steepnessPerDay }: FermentationCurve): number {
  return (steepnessPerDay * (upperGravity - lowerGravity)) / 4;
}

/** Day on which the curve comes within `distance` of its lower end; -Infinity when it never stood above that. */
export function dayWithin({ upperGravity, lowerGravity, steepnessPerDay, middleDay }: FermentationCurve, distance: number): number {
  const ratio = (upperGravity - lowerGravity) / distance - 1;
  return ratio <= 0 ? -Infinity : middleDay + Math.log(ratio) / steepnessPerDay;
}

/** The four numbers of a curve in the order that the least squares work on. */
export const asList = (curve: FermentationCurve): number[] => [curve.upperGravity, curve.lowerGravity, curve.steepnessPerDay, curve.middleDay];

/** The curve of four such numbers: gravity, gravity, per day, day. */
export const asCurve = ([upperGravity = 1, lowerGravity = 1, steepnessPerDay = 1, middleDay = 0]: readonly number[]): FermentationCurve => ({
  upperGravity,
  lowerGravity,
  steepnessPerDay,
  middleDay,
});

/** The curve as least squares wants it: its value and its slopes against the four numbers. */
export const logisticModel: Model = {
  value: (parameters, day) => gravityOnDay(asCurve(parameters), day),
  gradient: (parameters, day) => {
    const { upperGravity, lowerGravity, steepnessPerDay, middleDay } = asCurve(parameters);
    const left = shareLeft(steepnessPerDay, middleDay, day);
    const bend = (upperGravity - lowerGravity) * left * (1 - left);
    return [left, 1 - left, -bend * (day - middleDay), bend * steepnessPerDay];
  },
};
