import { instantOf, nextInstantAt } from "../wall-clock";
import type { DayLine, TimedLine } from "./day-lines";
import { runningTimer, type Timer } from "./timers";

const minute = 60_000;
const hour = 60 * minute;

/** "another day": nothing is done yet and the plan is for another day. "over": begun, and long past. */
export type DayPhase = "another day" | "going" | "over" | "finished";

/** Where a brew day stands: derived from the sheet and the clock alone. All times are instants. */
export interface DayState {
  readonly phase: DayPhase;
  readonly lines: readonly TimedLine[];
  /** The line that is due next, or overdue. */
  readonly current: TimedLine | undefined;
  /** What follows: the next two, and during the boil all that still goes in. */
  readonly coming: readonly TimedLine[];
  /** Skipped: a later line is done already. */
  readonly missed: readonly TimedLine[];
  readonly running: Timer | undefined;
  readonly endsAt: number;
  /** Against the plan; below 0 when ahead of it. */
  readonly lateMinutes: number;
  /** The last time that was written lies ahead of this computer's clock by so much: it was put back. */
  readonly clockBehindMinutes: number;
}

/** So many minutes before it is due, marking a line is doubted: a few already change a mash, a boil, a beer (our judgement). */
const doubtedFrom = 5;

/**
 * How many minutes too early a line would be marked now, 0 where that is nothing to ask about. Before anything is done
 * nothing is early: the day begins when the brewer begins.
 */
export function doubtfullyEarly({ lines }: DayState, line: TimedLine, now: number): number {
  const early = Math.round((line.dueAt - now) / minute);
  return lines.some(({ isDone }) => isDone) && early >= doubtedFrom ? early : 0;
}

/** Nothing is done yet and the plan's time has gone by: the day has not begun late, it begins now. */
export const beginsNow = ({ lines, current }: DayState, now: number): boolean =>
  current !== undefined && !lines.some(({ isDone }) => isDone) && now - instantOf(current.planned) >= minute;

export function dayState(lines: readonly DayLine[], now: number): DayState | undefined {
  const [first, last] = [lines[0], lines.at(-1)];
  if (!first || !last) return undefined;
  const timed = withTimes(lines, now);
  const lastDone = timed.findLastIndex(({ isDone }) => isDone);
  const current = timed[lastDone + 1];
  const following = timed.slice(lastDone + 2);
  const boiling = current?.boilMinute !== undefined && current.kind !== "boil begins";
  const lastTime = Math.max(...timed.map(({ doneAt }) => doneAt ?? -Infinity));
  return {
    phase: phaseOf(timed, current, lastTime, now),
    lines: timed,
    current,
    coming: following.filter(({ boilMinute }, index) => index < 2 || (boiling && boilMinute !== undefined)),
    missed: timed.slice(0, Math.max(0, lastDone)).filter(({ isDone }) => !isDone),
    running: runningTimer(timed),
    endsAt: timed.at(-1)?.dueAt ?? now,
    lateMinutes: Math.round(((timed.at(-1)?.dueAt ?? 0) - instantOf(last.planned)) / minute),
    clockBehindMinutes: lastTime > now + minute ? Math.round((lastTime - now) / minute) : 0,
  };
}

function phaseOf(timed: readonly TimedLine[], current: TimedLine | undefined, lastTime: number, now: number): DayPhase {
  if (!current) return "finished";
  if (timed.some(({ isDone }) => isDone)) return Number.isFinite(lastTime) && now > lastTime + 18 * hour ? "over" : "going";
  const [begins, ends] = [instantOf(timed[0]?.planned ?? 0), instantOf(timed.at(-1)?.planned ?? 0)];
  return now < begins - 12 * hour || now > ends + 12 * hour ? "another day" : "going";
}

/** In a boil that runs, additions and vessels stand at their minute: none of them moves another. */
const standsInBoil = ({ kind, boilMinute }: DayLine): boolean => boilMinute !== undefined && (kind === "step" || kind === "hop");

/** Each line with the real time beside it, and the plan moved along by what has really happened. */
function withTimes(lines: readonly DayLine[], now: number): TimedLine[] {
  const lastDone = lines.findLastIndex(({ happened }) => happened !== "");
  let shift = 0;
  let earliest: number | undefined;
  let boils = false;
  return lines.map((line, index) => {
    const planned = instantOf(line.planned);
    const isDone = line.happened !== "";
    const doneAt = timeDone(line, earliest ?? planned - 12 * hour);
    if (doneAt !== undefined) earliest = doneAt - 6 * hour;
    if (line.kind === "boil begins" && isDone) boils = true;
    const fixed = boils && standsInBoil(line);
    if (doneAt !== undefined && !fixed) shift = doneAt - planned;
    const dueAt = doneAt ?? planned + shift;
    // What should have begun by now pushes the rest of the day before it.
    if (index === lastDone + 1 && !fixed && now > dueAt) shift += now - dueAt;
    return { ...line, doneAt, isDone, dueAt };
  });
}

/** The sheet keeps times of day; the day follows from the order of the lines. A date typed with the time is taken as it is. */
function timeDone({ happened }: DayLine, earliest: number): number | undefined {
  if (typeof happened !== "number" || happened < 0) return undefined;
  return happened < 1 ? nextInstantAt(happened, earliest) : instantOf(happened);
}
