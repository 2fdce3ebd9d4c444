import { BrewingError } from "../brewing-error";
import { leastSquares, normalEquations, type Bounds, type Point } from "../math/least-squares";
import { inverseOfPositiveDefinite } from "../math/linear";
import { studentQuantile95 } from "../math/student";
import { asCurve, asList, gravityOnDay, logisticModel, type FermentationCurve } from "./logistic";
import { lowestPossibleGravity } from "./possible";
import type { Reading } from "./readings";
import { hair, steadiness } from "./steady";

/** A fermentation curve through a log, with what the log says about its certainty. */
export interface FermentationFit {
  readonly curve: FermentationCurve;
  /** Whether all four numbers come from the readings, or the ends were held. */
  readonly ends: "fitted" | "held";
  /** Half width of the 95 % confidence band of something whose slopes against the four numbers are given. */
  readonly plusOrMinus: (slopes: readonly number[]) => number;
}

/** A reading good to one line (0.001) of a hydrometer: standard uncertainty a/√3 (JCGM 100:2008, 4.3.7), taken to be known within a quarter, hence 8 degrees of freedom (G.4.2). */
const readingUncertainty = 0.001 / Math.sqrt(3);
const readingDegreesOfFreedom = 8;
/** From so many readings on all four numbers are fitted; with fewer the ends are held. */
const enoughReadings = 5;
/** Below this fall, and with fewer than two readings clear of both ends, any curve would do. */
const leastFall = 0.005;
const clearOfEnd = 0.0015;
/** A forecast vaguer than this helps nobody. */
const widestFinalGravity = 0.006;

const tooEarly = (why: string): BrewingError => new BrewingError("uncovered", `too early to tell: ${why}`);

/**
 * Refuses a log in which next to nothing has happened yet.
 *
 * @param fall of the specific gravity since the beginning
 * @throws BrewingError "uncovered" below 0.005
 */
export function requireFall(fall: number): void {
  if (fall < leastFall - hair) throw tooEarly(`gravity has fallen by ${Math.max(fall, 0).toFixed(3)}, and a curve needs ${leastFall.toFixed(3)} or more`);
}

/**
 * The fermentation curve of a log by least squares. With five readings or more its ends are free, if the readings can
 * tell them (the upper one only where the original gravity is not given); else they are held at the original gravity (the
 * first reading, when it is not given) and the expected final gravity. A log that has stalled is held at its newest reading: the curve never goes on falling out of a stall.
 *
 * The covariance of the numbers is s² (JᵀJ)⁻¹ with s² = Σr²/(n − p) (GNU Scientific Library manual, Nonlinear
 * least-squares fitting, covariance matrix; G. A. F. Seber and C. J. Wild, Nonlinear Regression, 1989, ch. 5, from
 * memory), s never below what a hydrometer can be read to.
 *
 * @param readings in the order of time
 * @throws BrewingError "impossible" when gravity rose, "uncovered" when the log is too short, or has fallen too little
 */
export function fitFermentation(readings: readonly Reading[], originalGravity?: number, expectedGravity?: number): FermentationFit {
  const [first] = readings;
  const newest = readings.at(-1);
  if (first === undefined || newest === undefined || readings.length < 2) throw tooEarly("at least two readings on the way down are needed");
  const state = steadiness(readings, 0.001, expectedGravity);
  if (state === "rising") throw new BrewingError("impossible", "the newest reading stands above an earlier one; measure again and clear the wrong row (a curve cannot follow sugar or fruit added later)");
  const highest = Math.max(...readings.map(({ gravity }) => gravity));
  const upper = Math.max(originalGravity ?? first.gravity, highest);
  requireFall(upper - newest.gravity);
  const lowest = Math.min(lowestPossibleGravity(upper), newest.gravity);

  if (state !== "stalled" && readings.length >= enoughReadings) {
    const free = fitWithin(readings, { least: [originalGravity === undefined ? highest : upper, lowest], most: [originalGravity === undefined ? 1.2 : upper, newest.gravity] }, "fitted");
    if (free !== undefined && free.plusOrMinus([0, 1, 0, 0]) <= widestFinalGravity) return free;
  }
  const end = state === "stalled" || state === "steady" ? newest.gravity : expectedGravity;
  if (end === undefined) {
    throw tooEarly(readings.length < enoughReadings ? "with fewer than five readings the expected gravity must be given" : "the readings do not show yet where the curve will end; give the expected gravity, or wait");
  }
  if (newest.gravity < end - hair) throw tooEarly("the newest reading is below the gravity expected, and it still falls; wait until two readings a day apart agree");
  const lower = Math.max(Math.min(end, newest.gravity), lowest);
  const onTheWay = readings.filter(({ gravity }) => gravity < upper - clearOfEnd && gravity > lower + clearOfEnd).length;
  const held = onTheWay < 2 ? undefined : fitWithin(readings, { least: [upper, lower], most: [upper, lower] }, "held");
  if (held === undefined) throw tooEarly("at least two readings on the way down, between the original and the final gravity, are needed");
  return held;
}

/** Tries the steepnesses and middles that the log could have, and keeps the best fit. */
function fitWithin(readings: readonly Reading[], ends: Bounds, kind: FermentationFit["ends"]): FermentationFit | undefined {
  // Days count from the first reading, so that Excel's day numbers cost no digits.
  const start = readings[0]?.day ?? 0;
  const points: Point[] = readings.map(({ day, gravity }) => ({ x: day - start, y: gravity }));
  const span = Math.max(points.at(-1)?.x ?? 0, 0.25);
  const bounds = { least: [...ends.least, 0.05, -2 * span], most: [...ends.most, 12, 3 * span] };
  const starts = [0.2, 0.5, 1].flatMap((middle) => [4, 12].map((steepness) => [ends.least[0] ?? 1, ends.most[1] ?? 1, steepness / span, middle * span]));
  const [best] = starts.map((guess) => leastSquares(logisticModel, points, guess, bounds)).sort((one, other) => one.sumOfSquares - other.sumOfSquares);
  if (best === undefined) return undefined;

  // A number at its bound is known from elsewhere; the lower end is not, unless it was held.
  const free = best.parameters.flatMap((value, index) => {
    const [least = -Infinity, most = Infinity] = [bounds.least[index], bounds.most[index]];
    return least < most && (index === 1 || (value > least && value < most)) ? [index] : [];
  });
  const inverse = inverseOfPositiveDefinite(normalEquations(logisticModel, best.parameters, points, free).matrix);
  if (inverse === undefined || !free.includes(3)) return undefined;
  const degrees = points.length - free.length;
  const spread = Math.max(readingUncertainty, degrees > 0 ? Math.sqrt(best.sumOfSquares / degrees) : 0);
  const coverage = studentQuantile95(Math.max(degrees, readingDegreesOfFreedom));
  // An end that the newest reading keeps from standing higher is as uncertain as that one reading, however many agree with it.
  const ownUncertainty = kind === "fitted" && best.parameters[1] === bounds.most[1] ? readingUncertainty : 0;
  const curve = asCurve(best.parameters);
  return {
    curve: { ...curve, middleDay: curve.middleDay + start },
    ends: kind,
    plusOrMinus: (slopes) => {
      const own = free.map((index) => slopes[index] ?? 0);
      const variance = own.reduce((sum, one, row) => sum + own.reduce((line, other, column) => line + one * other * (inverse[row]?.[column] ?? 0), 0), 0);
      return coverage * Math.hypot(spread * Math.sqrt(Math.max(variance, 0)), ownUncertainty * (slopes[1] ?? 0));
    },
  };
}

/** The curve on a day with its 95 % band, which, like the curve, stays between the two ends with what they are good to. */
export function bandOnDay({ curve, plusOrMinus }: FermentationFit, day: number): { gravity: number; low: number; high: number } {
  const gravity = gravityOnDay(curve, day);
  const half = plusOrMinus(logisticModel.gradient(asList(curve), day));
  const lowest = Math.max(curve.lowerGravity - plusOrMinus([0, 1, 0, 0]), lowestPossibleGravity(curve.upperGravity));
  const highest = curve.upperGravity + plusOrMinus([1, 0, 0, 0]);
  // A newest reading below what can be keeps the curve below it, too.
  return { gravity, low: Math.min(Math.max(gravity - half, lowest), gravity), high: Math.max(Math.min(gravity + half, highest), gravity) };
}
