import { BrewingError } from "../brewing-error";
import { leastSquares, normalEquations, type Bounds, type Point } from "../math/least-squares";
import { choleskyFactor, inverseOfPositiveDefinite } from "../math/linear";
import { normalHypercube } from "../math/normal-draws";
import { condensed } from "./condensed";
import { lowestPossibleGravity } from "./possible";
import { beliefsOf, finalBeforehand, readingUncertainty } from "./prior";
import type { Reading } from "./readings";
import { asCurve, asList, gravityOnDay, richardsModel, type FermentationCurve } from "./richards";
import { hair, realFall, standingOf, type KnownOfBeer } from "./steady";

/** A curve that the readings leave possible, with two standard normal draws for what no curve knows. */
export interface PossibleCourse {
  readonly curve: FermentationCurve;
  readonly pace: number;
  readonly tail: number;
}

/** A fermentation curve through a log, with how far it can be trusted. */
export interface FermentationFit {
  readonly curve: FermentationCurve;
  readonly newest: Reading;
  /** Whether a final gravity was expected from elsewhere. */
  readonly endExpected: boolean;
  /** Half width of the 95 % band of the final gravity. */
  readonly finalPlusOrMinus: number;
  /** What it was before any reading: whether the readings or the expectation say more. */
  readonly finalPlusOrMinusBeforehand: number;
  /** Half width of the 95 % band of the gravity at which it began. */
  readonly originalPlusOrMinus: number;
  /** Half width of the 95 % band of the curve on a day. */
  readonly plusOrMinusOn: (day: number) => number;
  /** Courses as likely as one another. */
  readonly possible: readonly PossibleCourse[];
}

/** No fermentation follows a smooth curve closer than this share of its fall (our judgement). */
const curveError = 0.01;
/** What is still to fall may do so by another law: so much of it, as a standard deviation (our judgement). */
const finalError = 0.05;
/** The time that is still to come likewise: its logarithm is known to so much (our judgement). */
export const paceError = 0.2;
/** 19 times out of 20. */
export const coverage = 1.959964;
const courses = 300;
/** Beyond these no fermentation has been described: first order, and twice as lopsided as the logistic the other way. */
const shapes = { least: -0.95, most: 3 } as const;

export const tooEarly = (why: string): BrewingError => new BrewingError("uncovered", `too early to tell: ${why}`);

/**
 * The fermentation curve of a log: least squares, in which what was known beforehand counts like further readings, each
 * by its own uncertainty: the original gravity, the gravity expected, how fast and how lopsided fermentations are
 * (`prior.ts`). With few readings the expectation decides, with many the readings do. A log at rest ends where it stands.
 *
 * The covariance of the five numbers is (JᵀWJ + P)⁻¹, with the weights W of the readings and P of what was known (G. A.
 * F. Seber and C. J. Wild, Nonlinear Regression, 1989, ch. 5, from memory; with P it is the posterior of Bayes' rule
 * near its peak, A. Gelman et al., Bayesian Data Analysis, ch. 4, from memory). Readings that scatter more than their
 * uncertainty widen it. What no curve of the family knows is added: `curveError`, `finalError`, `paceError`.
 *
 * @param readings in the order of time
 * @throws BrewingError "impossible" when gravity rose, "uncovered" when there are fewer than two readings, or too little has fallen
 */
export function fitFermentation(readings: readonly Reading[], known: KnownOfBeer = {}): FermentationFit {
  const groups = condensed(readings);
  const [first] = groups;
  const newest = groups.at(-1);
  if (first === undefined || newest === undefined || groups.length < 2) throw tooEarly("at least two readings are needed");
  const { state } = standingOf(readings, 0.001, known);
  if (state === "rising")
    throw new BrewingError(
      "impossible",
      "the newest reading stands above an earlier one; measure again and clear the wrong row (a curve cannot follow sugar or fruit added later)",
    );
  const highest = Math.max(...groups.map(({ gravity }) => gravity));
  const upper = Math.max(known.originalGravity ?? first.gravity, highest);
  const fallen = Math.max(upper - newest.gravity, 0);
  if (fallen < realFall - hair)
    throw tooEarly(`gravity has fallen by ${fallen.toFixed(3)}, and a curve needs ${realFall.toFixed(3)} or more`);

  const final = finalBeforehand(state, upper, newest.gravity, known);
  const span = Math.max(newest.day - first.day, 0.25);
  // Days count from the first reading, so that Excel's day numbers cost no digits.
  const points: Point[] = groups.map(({ day, gravity, readings: count }) => ({
    x: day - first.day,
    y: gravity,
    weight: 1 / (readingUncertainty ** 2 / count + (curveError * (upper - final.value)) ** 2),
  }));
  const beliefs = beliefsOf(upper, known.originalGravity !== undefined, final, span);
  const bounds: Bounds = {
    // A beer at rest does not go on falling.
    least: [
      highest - 0.002,
      state === "steady" || state === "stalled" ? newest.gravity : Math.min(lowestPossibleGravity(upper), newest.gravity),
      Math.log(0.01),
      -2 * span - 5,
      shapes.least,
    ],
    most: [1.2, newest.gravity, Math.log(6), 3 * span + 30, shapes.most],
  };
  const starts = [
    [0.5, 0.3],
    [0.3, 0.6],
    [1.2, 0.15],
  ].map(([middle = 0, steepness = 0]) => [upper, final.value, Math.log(steepness), middle * span, 0]);
  const [best] = starts
    .map((guess) => leastSquares(richardsModel, points, guess, bounds, beliefs))
    .sort((one, other) => one.sumOfSquares - other.sumOfSquares);
  const all = starts[0]?.map((_, index) => index) ?? [];
  const covariance = best && inverseOfPositiveDefinite(normalEquations(richardsModel, best.parameters, points, all, beliefs).matrix);
  const factor = covariance && choleskyFactor(covariance);
  if (!best || !covariance || !factor) throw tooEarly("the readings cannot be followed yet");

  const scatter = Math.max(1, Math.sqrt(best.sumOfSquares / points.length));
  const dated = (parameters: readonly number[]): FermentationCurve =>
    asCurve(parameters.map((value, index) => (index === 3 ? value + first.day : value)));
  const curve = dated(best.parameters);
  const ofSlopes = (slopes: readonly number[]): number =>
    scatter *
    Math.sqrt(
      Math.max(
        slopes.reduce(
          (sum, one, row) => sum + slopes.reduce((line, other, column) => line + one * other * (covariance[row]?.[column] ?? 0), 0),
          0,
        ),
        0,
      ),
    );
  const stillToFall = Math.max(gravityOnDay(curve, newest.day) - curve.lowerGravity, 0);
  return {
    curve,
    newest,
    endExpected: known.expectedGravity !== undefined,
    finalPlusOrMinus: coverage * Math.hypot(ofSlopes([0, 1, 0, 0, 0]), finalError * stillToFall),
    finalPlusOrMinusBeforehand: coverage * final.deviation,
    originalPlusOrMinus: coverage * ofSlopes([1, 0, 0, 0, 0]),
    plusOrMinusOn: (day) => {
      const slopes = richardsModel.gradient(asList(curve), day);
      const ahead = Math.max(day - newest.day, 0);
      const fallPerDay = ahead === 0 ? 0 : gravityOnDay(curve, day - 0.005) * 100 - gravityOnDay(curve, day + 0.005) * 100;
      const sinceNewest = ahead === 0 ? 0 : Math.max(gravityOnDay(curve, newest.day) - gravityOnDay(curve, day), 0);
      return coverage * Math.hypot(ofSlopes(slopes), fallPerDay * paceError * ahead, finalError * sinceNewest);
    },
    possible: fixedDraws().map((draw) => ({
      curve: dated(
        best.parameters.map((value, row) => {
          const moved = value + scatter * (factor[row] ?? []).reduce((sum, entry, column) => sum + entry * (draw[column] ?? 0), 0);
          return Math.min(Math.max(moved, bounds.least[row] ?? -Infinity), bounds.most[row] ?? Infinity);
        }),
      ),
      pace: draw[5] ?? 0,
      tail: draw[6] ?? 0,
    })),
  };
}

/** The same draws every time: the same log has the same forecast. */
let drawn: readonly (readonly number[])[] | undefined;
function fixedDraws(): readonly (readonly number[])[] {
  if (drawn === undefined) {
    const variables = normalHypercube(7, courses);
    drawn = Array.from({ length: courses }, (_, course) => variables.map((values) => values[course] ?? 0));
  }
  return drawn;
}

/** The curve on a day with its 95 % band, which, like the curve, stays between the two ends with what they are good to. */
export function bandOnDay(
  { curve, plusOrMinusOn, originalPlusOrMinus, finalPlusOrMinus }: FermentationFit,
  day: number,
): { gravity: number; low: number; high: number } {
  const gravity = gravityOnDay(curve, day);
  const half = plusOrMinusOn(day);
  const lowest = Math.max(curve.lowerGravity - finalPlusOrMinus, lowestPossibleGravity(curve.upperGravity));
  const highest = curve.upperGravity + originalPlusOrMinus;
  // A newest reading below what can be keeps the curve below it, too.
  return { gravity, low: Math.min(Math.max(gravity - half, lowest), gravity), high: Math.max(Math.min(gravity + half, highest), gravity) };
}
