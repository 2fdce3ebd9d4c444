import type { Reading } from "./readings";

/** What a log of readings says about the fermentation. */
export type Steadiness = "not begun" | "working" | "nearly" | "steady" | "stalled" | "rising";

/** What is known beside the readings. */
export interface KnownOfBeer {
  readonly expectedGravity?: number | undefined;
  readonly originalGravity?: number | undefined;
  /** Something was added then that can wake the beer up: only readings at least a day (less an hour) later show that it rests. It never makes the verdict laxer. */
  readonly countFrom?: number | undefined;
}

/** A verdict with the readings that it rests on. */
export interface Standing {
  readonly state: Steadiness;
  /** Of a beer at rest: how many readings agree, over how many days. */
  readonly restsOn?: { readonly readings: number; readonly days: number };
}

/** Readings an hour short of a day still count as a day apart: nobody reads at the same minute. */
export const almostADay = 23 / 24;
/** So far back all readings count, once there are five or more of them: five daily ones, none at the same hour. */
export const lastDays = { days: 4.5, readings: 5 } as const;
/** Their first part is held against their last: older than the one, not older than the other, in days. */
export const parts = { olderThan: 2.75, newerThan: 1.75 } as const;
/** What stood that much higher belongs to the fermentation itself, and says nothing about rest. */
export const stillFermenting = 0.004;
/** Fall in a day, in gravity, that still counts as the tail of a fermentation (common practice). */
export const slowFallPerDay = 0.002;
/** How far above the expected final gravity a beer at rest may stand: a reading and an expected gravity together are good to no more (our judgement). */
export const stalledAbove = 0.003;
/** Nearer than this to the expected gravity a slow fall is the end of it; higher up it is only slow (our judgement). */
export const nearAbove = 0.006;
/** Less than this has fallen: the yeast has not begun, or nobody can tell. */
export const realFall = 0.005;
/** Where neither original gravity nor fall is known, a wort weaker than this passes for beer (our judgement). */
export const beerBelow = 1.025;
/** Where no gravity is expected, a beer that kept more than this share of its points has stopped early (our judgement). */
export const shareKept = 0.5;
/** In tolerances: few readings creep when they lost more than the first in the last two days and a half, and still more than the third since the reading of a day ago; or, four of them, so slowly that it was no more than the second. */
export const creeping = { days: 2.5, from: 2 / 3, to: 1.5, lately: 1 / 3, slowlyOf: 4, latelyOf: 3 } as const;
/** A fall of half the tolerance a day is to be found out: half a line, a quarter volume of gas in a bottle. */
export const restShare = 0.5;
/** That many standard deviations of the difference keep a beer that falls so fast from passing: fewer than one log in ten. */
export const fallDeviations = 1.36;
/** No more readings than this make a mean better: their errors are not all their own (our judgement). */
export const countedAtMost = 20;
/** From so many readings in a day (and an hour) on a log is an instrument's, whose single values scatter by a tolerance. */
export const denseLog = { readings: 4, days: 25 / 24 } as const;
/** In tolerances: how far the newest reading may stand above an earlier one, or the last part of a dense log above its first. Of many readings one stands too low or too high by chance. */
export const risen = { few: 2, many: 3 } as const;
/** Swallows the rounding of 1.012 − 1.011 in binary. */
export const hair = 1e-9;

/** The verdict alone, as `standingOf` gives it. */
export const steadiness = (readings: readonly Reading[], tolerance: number, known: KnownOfBeer = {}): Steadiness =>
  standingOf(readings, tolerance, known).state;

/**
 * Whether a fermentation is over.
 *
 * - "rising": the newest reading is above an earlier one by more than twice the tolerance: a reading is wrong. Of a
 *   dense log not a single value is asked but its trend.
 * - "not begun": as good as nothing has fallen.
 * - "steady": with fewer than five readings in the last four days and a half the rule of the trade stands, two readings a
 *   day apart (less an hour) that agree within the tolerance, with all between, and three or four of them do not creep: a
 *   line lost every other day agrees from one day to the next, and yet each line is half a volume of gas in a bottle.
 *   From five readings on all of them count: the mean of those older than 2.75 days less the mean of the last 1.75 days,
 *   with 1.36 standard deviations, must be no more than half the tolerance a day. A beer that falls half a line a day
 *   passes in fewer than one log in ten, a finished one in more than nine (tests/core/log/steady-risk.test.ts). Readings
 *   more than 0.004 above the newest are left out of both: they belong to the fermentation, not to its end.
 * - "stalled": at rest, but more than 0.003 above the expected final gravity, or, where none is expected, with more
 *   than half of its points left.
 * - "nearly": not at rest, but falling by no more than 0.002 a day since that reading a day ago, and no more than 0.006
 *   above the expected gravity.
 * - "working": everything else, also a single reading and readings of less than a day.
 *
 * After something that can wake the beer up, "steady" wants more, never less: all of the above over all readings, since
 * a fall that began before has not ended because of it, and two readings a day apart, both a day (less an hour) after it,
 * that agree with all between; in a dense log instead one that counts and is 2.75 days old. Without those it is
 * "working". Whether it has stalled, not begun or risen all readings tell. So a date never makes the verdict laxer.
 *
 * Two equal readings: common practice, as are 0.002 a day. A reading by hand scatters by u = tolerance/√3 (JCGM
 * 100:2008, 4.3.7), an instrument's by the whole tolerance (our judgement); the difference of the two means of about two
 * fifths of n readings each has the standard deviation u √(5/n). Everything here can be said in MINIFS and AVERAGEIFS:
 * an unplugged copy does so.
 *
 * @param readings in the order of time, at least one
 * @param tolerance difference in gravity that counts as equal, above 0
 */
export function standingOf(readings: readonly Reading[], tolerance: number, known: KnownOfBeer = {}): Standing {
  const newest = readings.at(-1);
  if (newest === undefined) throw new Error("steadiness needs at least one reading");
  const within = (days: number): Reading[] => readings.filter(({ day }) => newest.day - day <= days + hair);
  const level = mean(within(almostADay - 2 * hair).map(({ gravity }) => gravity));
  const dense = within(denseLog.days).length >= denseLog.readings;
  const recent = within(lastDays.days).filter(({ gravity }) => gravity - newest.gravity <= stillFermenting + hair);
  const many = recent.length >= lastDays.readings;
  const older = meanOf(recent.filter(({ day }) => newest.day - day >= parts.olderThan - hair));
  const newer = meanOf(recent.filter(({ day }) => newest.day - day <= parts.newerThan + hair));
  const reference = readings.findLast(({ day }) => newest.day - day >= almostADay - hair);
  if (reference === undefined) return { state: "working" };
  const rise = dense
    ? older && newer
      ? newer.gravity - older.gravity
      : 0
    : newest.gravity - Math.min(...readings.map(({ gravity }) => gravity));
  if (rise > (dense || many ? risen.many : risen.few) * tolerance + hair) return { state: "rising" };

  const fallPerDay = (reference.gravity - newest.gravity) / (newest.day - reference.day);
  const lastDay = readings.filter(({ day }) => day >= reference.day);
  const agree = spread(lastDay) <= tolerance + hair;
  const settled = many
    ? rests(
        older,
        newer,
        (dense ? tolerance : tolerance / Math.sqrt(3)) * Math.sqrt(lastDays.readings / Math.min(recent.length, countedAtMost)),
        tolerance,
      )
    : agree && !creeps(recent, newest, reference, tolerance);

  const upper = Math.max(known.originalGravity ?? 0, ...readings.map(({ gravity }) => gravity));
  const fall = upper - level;
  const excess = known.expectedGravity === undefined ? undefined : level - known.expectedGravity;
  const begun =
    fall >= realFall - hair ||
    (known.originalGravity === undefined && level <= beerBelow + hair) ||
    (excess !== undefined && excess <= stalledAbove + hair);
  if (!begun) return { state: settled || fall <= tolerance + hair ? "not begun" : "working" };
  const agreeing = many ? recent : lastDay;
  const restsOn = { readings: agreeing.length, days: newest.day - (agreeing[0]?.day ?? newest.day) };
  const stalled =
    excess === undefined ? fall >= realFall - hair && level - 1 > shareKept * (upper - 1) + hair : excess > stalledAbove + hair;
  if (settled && stalled) return { state: "stalled", restsOn };
  const { countFrom } = known;
  if (countFrom !== undefined) {
    const apart = dense ? parts.olderThan : almostADay;
    if (!readings.some(({ day }) => day >= countFrom + almostADay - hair && newest.day - day >= apart - hair)) return { state: "working" };
    if (settled && !dense && !agree) return { state: "nearly" };
  }
  if (settled) return { state: "steady", restsOn };
  return { state: fallPerDay <= slowFallPerDay + hair && (excess === undefined || excess <= nearAbove + hair) ? "nearly" : "working" };
}

function meanOf(readings: readonly Reading[]): Reading | undefined {
  return readings.length === 0
    ? undefined
    : { day: mean(readings.map(({ day }) => day)), gravity: mean(readings.map(({ gravity }) => gravity)) };
}

/** Whether the first part of the last days stands no higher above the last part than a beer at rest may. */
function rests(older: Reading | undefined, newer: Reading | undefined, deviation: number, tolerance: number): boolean {
  if (older === undefined || newer === undefined) return false;
  return older.gravity - newer.gravity + fallDeviations * deviation <= restShare * tolerance * (newer.day - older.day) + hair;
}

/** Three or four readings that agree from one day to the next, and yet lose a line in a day or two. */
function creeps(recent: readonly Reading[], newest: Reading, dayBefore: Reading, tolerance: number): boolean {
  const lost =
    Math.max(...recent.filter(({ day }) => newest.day - day <= creeping.days + hair).map(({ gravity }) => gravity)) - newest.gravity;
  const slowly = recent.length >= creeping.slowlyOf && lost <= creeping.to * tolerance + hair;
  const lately = recent.length >= creeping.latelyOf && dayBefore.gravity - newest.gravity > creeping.lately * tolerance + hair;
  return lost > creeping.from * tolerance + hair && (slowly || lately);
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function spread(readings: readonly Reading[]): number {
  const gravities = readings.map(({ gravity }) => gravity);
  return Math.max(...gravities) - Math.min(...gravities);
}
