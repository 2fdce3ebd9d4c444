import type { Reading } from "./readings";

/** What a log of readings says about the fermentation. */
export type Steadiness = "not begun" | "working" | "nearly" | "steady" | "stalled" | "rising";

/** What is known beside the readings. */
export interface KnownOfBeer {
  readonly expectedGravity?: number | undefined;
  readonly originalGravity?: number | undefined;
  /** Readings before this moment say nothing about rest: something was added that can wake the beer up. */
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
/** What stood that much higher belongs to the fermentation itself, and says nothing about rest; of a dense log, whose values scatter, twice as much. */
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
/** Three or four readings that lose more than this share of the tolerance a day creep, if they did so slowly: never more than one and a half tolerances in all. */
export const restless = 1 / 3;
export const slowInAll = 1.5;
/** A fall of half the tolerance a day is to be found out: half a line, a quarter volume of gas in a bottle. */
export const restShare = 0.5;
/** That many standard deviations of the slope keep a beer that falls so fast from passing: fewer than one log in ten. */
export const slopeDeviations = 1.45;
/** The scatter of readings is taken to be known as well as from so many of them (JCGM 100:2008, G.4.2: within a third). */
export const scatterKnown = 5;
/** Readings closer together than four a day share their errors: they count as four a day (our judgement). */
export const independentPerDay = 4;
/** From so many readings in two days on a log is an instrument's, whose single values scatter. */
export const denseLog = { readings: 8, days: 2 + 1 / 12 } as const;
/** A dense log rises when its slope does, beyond what chance gives. */
export const risingDeviations = 4;
/** Swallows the rounding of 1.012 − 1.011 in binary. */
export const hair = 1e-9;

/** The verdict alone, as `standingOf` gives it. */
export const steadiness = (readings: readonly Reading[], tolerance: number, known: KnownOfBeer = {}): Steadiness => standingOf(readings, tolerance, known).state;

/**
 * Whether a fermentation is over.
 *
 * - "rising": the newest reading is above an earlier one by more than twice the tolerance: a reading is wrong. Of a
 *   dense log not a single value is asked but its trend.
 * - "not begun": as good as nothing has fallen.
 * - "steady": with fewer than five readings in the last four days the rule of the trade stands, two readings a day apart
 *   (less an hour) that agree within the tolerance, with all between, and no creeping: a line lost every day agrees from
 *   one day to the next, and yet each line is half a volume of gas in a bottle. From five readings on all of them
 *   count: the fall of a straight line through them, with 1.45 standard deviations of it, must stay within half the
 *   tolerance a day. A beer that falls half a line a day passes in fewer than one log in ten, a finished one in more
 *   than nine (tests/core/log/steady-risk.test.ts). Readings more than 0.004 above the newest are left out of both:
 *   they belong to the fermentation, not to its end.
 * - "stalled": at rest, but more than 0.003 above the expected final gravity, or, where none is expected, with more
 *   than half of its points left.
 * - "nearly": not at rest, but falling by no more than 0.002 a day since that reading a day ago, and no more than 0.006
 *   above the expected gravity.
 * - "working": everything else, also a single reading and readings of less than a day.
 *
 * Two equal readings: common practice, as are 0.002 a day. The slope and its deviation: any text on the straight line
 * by least squares; the scatter of readings is pooled from what a hydrometer can be read to, tolerance/√3 (JCGM
 * 100:2008, 4.3.7), and from the readings' own.
 *
 * @param readings in the order of time, at least one
 * @param tolerance difference in gravity that counts as equal, above 0
 */
export function standingOf(readings: readonly Reading[], tolerance: number, known: KnownOfBeer = {}): Standing {
  if (readings.length === 0) throw new Error("steadiness needs at least one reading");
  const counted = readings.filter(({ day }) => day >= (known.countFrom ?? -Infinity) - hair);
  const newest = counted.at(-1);
  if (newest === undefined) return { state: "working" };
  const within = (days: number): Reading[] => counted.filter(({ day }) => newest.day - day <= days + hair);
  const level = mean(within(almostADay - 2 * hair).map(({ gravity }) => gravity));
  const dense = within(denseLog.days).length >= denseLog.readings;
  const recent = within(lastDays.days).filter(({ gravity }) => gravity - level <= (dense ? 2 : 1) * stillFermenting + hair);
  const trend = trendOf(recent, tolerance);
  if (dense ? trendRises(trend, tolerance) : newest.gravity - Math.min(...counted.map(({ gravity }) => gravity)) > risenBy(recent.length) * tolerance + hair) return { state: "rising" };

  const reference = counted.findLast(({ day }) => newest.day - day >= almostADay - hair);
  if (reference === undefined) return { state: "working" };
  const fallPerDay = (reference.gravity - newest.gravity) / (newest.day - reference.day);
  const lastDay = counted.filter(({ day }) => day >= reference.day);
  const many = recent.length >= lastDays.readings;
  const settled = many
    ? trend !== undefined && trend.fallPerDay + slopeDeviations * trend.deviation <= restShare * tolerance + hair
    : spread(lastDay) <= tolerance + hair && !creeps(recent, trend, fallPerDay, tolerance);

  const upper = Math.max(known.originalGravity ?? 0, ...readings.map(({ gravity }) => gravity));
  const fall = upper - level;
  const excess = known.expectedGravity === undefined ? undefined : level - known.expectedGravity;
  const begun = fall >= realFall - hair || (known.originalGravity === undefined && level <= beerBelow + hair) || (excess !== undefined && excess <= stalledAbove + hair);
  if (!begun) return { state: settled || fall <= tolerance + hair ? "not begun" : "working" };
  if (!settled) return { state: fallPerDay <= slowFallPerDay + hair && (excess === undefined || excess <= nearAbove + hair) ? "nearly" : "working" };
  const stalled = excess === undefined ? fall >= realFall - hair && level - 1 > shareKept * (upper - 1) + hair : excess > stalledAbove + hair;
  const agreeing = many ? recent : lastDay;
  return { state: stalled ? "stalled" : "steady", restsOn: { readings: agreeing.length, days: newest.day - (agreeing[0]?.day ?? newest.day) } };
}

interface Trend {
  readonly fallPerDay: number;
  /** Its standard deviation. */
  readonly deviation: number;
  /** Between the first and the last of the readings. */
  readonly days: number;
}

/** The straight line through readings; undefined where they are all of one moment. */
function trendOf(readings: readonly Reading[], tolerance: number): Trend | undefined {
  const [day, gravity] = [mean(readings.map((reading) => reading.day)), mean(readings.map((reading) => reading.gravity))];
  const sum = (of: (reading: Reading) => number) => readings.reduce((total, reading) => total + of(reading), 0);
  const across = sum((reading) => (reading.day - day) ** 2);
  if (!(across > 1e-6)) return undefined;
  const together = sum((reading) => (reading.day - day) * (reading.gravity - gravity));
  const rest = Math.max(sum((reading) => (reading.gravity - gravity) ** 2) - together ** 2 / across, 0);
  const scatter = ((scatterKnown * tolerance ** 2) / 3 + rest) / (scatterKnown + readings.length - 2);
  const days = (readings.at(-1)?.day ?? 0) - (readings[0]?.day ?? 0);
  const shared = Math.max(1, readings.length / (independentPerDay * days));
  return { fallPerDay: -together / across, deviation: Math.sqrt((scatter * shared) / across), days };
}

/** Of many readings one stands two lines too low or too high by chance. */
const risenBy = (readings: number): number => (readings < lastDays.readings ? 2 : 3);

function trendRises(trend: Trend | undefined, tolerance: number): boolean {
  return trend !== undefined && -trend.fallPerDay > risingDeviations * trend.deviation + hair && -trend.fallPerDay * trend.days > 2 * tolerance + hair;
}

/** Three or four readings that agree from one day to the next, and yet lose a line in a day or two. */
function creeps(recent: readonly Reading[], trend: Trend | undefined, fallPerDay: number, tolerance: number): boolean {
  if (recent.length < 3 || trend === undefined || trend.fallPerDay <= restless * tolerance + hair) return false;
  return fallPerDay > restless * tolerance + hair || spread(recent) <= slowInAll * tolerance + hair;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function spread(readings: readonly Reading[]): number {
  const gravities = readings.map(({ gravity }) => gravity);
  return Math.max(...gravities) - Math.min(...gravities);
}
