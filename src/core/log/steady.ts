import type { Reading } from "./readings";

/** What a log of readings says about the fermentation. */
export type Steadiness = "working" | "nearly" | "steady" | "stalled" | "rising";

/** Readings an hour short of a day still count as a day apart: nobody reads at the same minute. */
const almostADay = 23 / 24;
/** Fall in a day, in gravity, that still counts as the tail of a fermentation (common practice). */
const slowFallPerDay = 0.002;
/** How far above the expected final gravity a steady beer may stand before it has stalled (common practice). */
const stalledAbove = 0.004;
/** A beer that loses more than this share of the tolerance a day is not yet at rest when it also lost more than the tolerance in two to four days. */
const restless = 1 / 3;
const creepDays = { from: 47 / 24, to: 4 } as const;
/** Swallows the rounding of 1.012 − 1.011 in binary. */
export const hair = 1e-9;

/**
 * Whether a fermentation is over, by the rule of two equal readings a day apart (common practice; the thresholds are
 * from memory).
 *
 * - "rising": the newest reading is above an earlier one by more than twice the tolerance: a reading is wrong.
 * - "steady": the newest reading, the nearest one at least a day (less an hour) before it, and all between agree
 *   within the tolerance, and it does not creep: a line lost every day agrees from one day to the next, and yet each
 *   line is half a volume of gas in a bottle.
 * - "stalled": steady, but more than 0.004 above the expected final gravity; a wort that has not begun counts too.
 * - "nearly": not steady, but falling by no more than 0.002 a day since that reading a day ago; or creeping.
 * - "working": everything else, also a single reading and readings of less than a day.
 *
 * @param readings in the order of time, at least one
 * @param tolerance difference in gravity that counts as equal, above 0
 * @param expectedGravity expected final gravity, where it is known
 */
export function steadiness(readings: readonly Reading[], tolerance: number, expectedGravity?: number): Steadiness {
  const newest = readings.at(-1);
  if (newest === undefined) throw new Error("steadiness needs at least one reading");
  const lowest = Math.min(...readings.map(({ gravity }) => gravity));
  if (newest.gravity - lowest > 2 * tolerance + hair) return "rising";

  const dayBefore = readings.findLastIndex(({ day }) => newest.day - day >= almostADay - hair);
  const reference = readings[dayBefore];
  if (reference === undefined) return "working";

  const lastDay = readings.slice(dayBefore).map(({ gravity }) => gravity);
  if (Math.max(...lastDay) - Math.min(...lastDay) <= tolerance + hair) {
    if (expectedGravity !== undefined && newest.gravity - expectedGravity > stalledAbove + hair) return "stalled";
    return creeps(readings, newest, reference, tolerance) ? "nearly" : "steady";
  }
  const fallPerDay = (reference.gravity - newest.gravity) / (newest.day - reference.day);
  return fallPerDay <= slowFallPerDay + hair ? "nearly" : "working";
}

function creeps(readings: readonly Reading[], newest: Reading, dayBefore: Reading, tolerance: number): boolean {
  if ((dayBefore.gravity - newest.gravity) / (newest.day - dayBefore.day) <= restless * tolerance + hair) return false;
  const earlier = readings.filter(({ day }) => newest.day - day >= creepDays.from - hair && newest.day - day <= creepDays.to + hair);
  return earlier.some(({ gravity }) => gravity - newest.gravity > tolerance + hair);
}
