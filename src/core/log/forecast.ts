import { paceError, tooEarly, type FermentationFit, type PossibleCourse } from "./fit";
import { dayWithin, gravityOnDay, steepestFallPerDay } from "./richards";

/** One line of most hydrometers: nearer than this the beer is there. */
const oneLine = 0.001;
/** A last part of the sugar that ferments more slowly than the curve: its share of the fall, as a standard deviation (our judgement). */
const slowShare = 0.08;
/** The share that is left out at either side of a ±. */
const outside = 0.025;
/** A forecast vaguer than this helps nobody: of the final gravity, as such and as a share of the wort's points; of the day, in terms of the days that were read. */
const vague = { gravity: 0.006, points: 0.14, times: 2.5, days: 4 } as const;
/** Before a third of the way and a little nobody knows the pace; where no gravity is expected, nobody knows the way before three fifths of the points are eaten: the yeast may only be changing from one sugar to the next (our judgement). */
const least = { shareOfFall: 0.35, attenuation: 0.6 } as const;

export interface Forecast {
  readonly finalGravity: number;
  /** 95 %. */
  readonly finalGravityPlusOrMinus: number;
  /** Day on which the gravity comes within 0.001 of its end: the middle between the earliest and the latest that the readings leave possible. */
  readonly day: number;
  readonly dayPlusOrMinus: number;
  readonly steepestFallPerDay: number;
  /** Of the whole fall, on the day of the newest reading. */
  readonly shareDone: number;
  /** Whether the readings tell the end better than what was expected. */
  readonly byReadings: boolean;
}

/**
 * Where a fermentation that is under way ends and when it gets there.
 *
 * The days come from many curves that the readings leave possible (Monte Carlo, JCGM 101:2008, from memory); each is
 * stretched by chance from the newest reading on, and may have a slow tail. What is named lies midway between the days
 * that 2.5 % lie before and 2.5 % after, and never before the newest reading.
 *
 * @param firstDay day of the first reading
 * @throws BrewingError "uncovered" where the answer would be too vague to be of use
 */
export function forecastOf(fit: FermentationFit, firstDay: number): Forecast {
  const { curve, newest } = fit;
  const shareDone = (curve.upperGravity - gravityOnDay(curve, newest.day)) / (curve.upperGravity - curve.lowerGravity);
  if (shareDone < least.shareOfFall) throw tooEarly("about a third of the way down is needed");
  const eaten = (curve.upperGravity - newest.gravity) / (curve.upperGravity - 1);
  if (
    (!fit.endExpected && eaten < least.attenuation) ||
    fit.finalPlusOrMinus > Math.max(vague.gravity, vague.points * (curve.upperGravity - 1))
  ) {
    throw tooEarly("the readings do not show yet where the curve will end; give the expected gravity, or wait");
  }
  const days = fit.possible.map((course) => endOf(course, newest.day)).sort((one, other) => one - other);
  const at = (share: number): number => days[Math.round(share * (days.length - 1))] ?? newest.day;
  const [early, late] = [at(outside), at(1 - outside)];
  const dayPlusOrMinus = (late - early) / 2;
  if (dayPlusOrMinus > Math.max(vague.times * (newest.day - firstDay), vague.days))
    throw tooEarly(`the day of the end is known to ± ${dayPlusOrMinus.toFixed(0)} days only; read again tomorrow`);
  return {
    finalGravity: curve.lowerGravity,
    finalGravityPlusOrMinus: fit.finalPlusOrMinus,
    day: (early + late) / 2,
    dayPlusOrMinus,
    steepestFallPerDay: steepestFallPerDay(curve),
    shareDone,
    byReadings: fit.finalPlusOrMinus < fit.finalPlusOrMinusBeforehand / 2,
  };
}

/** Day on which one possible course is within a line of its end. */
function endOf({ curve, pace, tail }: PossibleCourse, newestDay: number): number {
  const byCurve = newestDay + Math.max(dayWithin(curve, oneLine) - newestDay, 0) * Math.exp(paceError * pace);
  // The slow part goes by a share of itself a day, as large as the share of the whole that goes half way down.
  const slow = slowShare * Math.abs(tail) * (curve.upperGravity - curve.lowerGravity);
  return slow > oneLine ? Math.max(byCurve, curve.halfDay + Math.log(slow / oneLine) / curve.steepnessPerDay) : byCurve;
}
