import type { TimedLine } from "./day-lines";

/** What runs: a step that takes its time, or the boil. All times are instants. */
export interface Timer {
  readonly row: number;
  readonly what: string;
  readonly caution: string;
  readonly startedAt: number;
  readonly endsAt: number;
  /** What has been done in the boil so far: done is done, and ends with the boil. */
  readonly doneInIt: readonly { readonly what: string; readonly at: number }[];
}

/** The timer that runs, if any. Lines without a real time have none. */
export const runningTimer = (lines: readonly TimedLine[]): Timer | undefined => boilTimer(lines) ?? stepTimer(lines);

/** The boil, until flame-out or anything after it is marked. */
function boilTimer(lines: readonly TimedLine[]): Timer | undefined {
  const begin = lines.find(({ kind }) => kind === "boil begins");
  const out = lines.find(({ kind }) => kind === "flame out");
  if (begin?.doneAt === undefined || !out || lines.slice(out.row).some(({ isDone }) => isDone)) return undefined;
  const doneInIt = lines.flatMap(({ row, what, doneAt, boilMinute }) =>
    row > begin.row && row < out.row && doneAt !== undefined && boilMinute !== undefined ? [{ what, at: doneAt }] : [],
  );
  return timer(begin, begin.doneAt, out.dueAt, doneInIt);
}

/** Steps before and after the boil follow one another, so at most one of them runs. */
function stepTimer(lines: readonly TimedLine[]): Timer | undefined {
  const chain = lines.filter(({ kind, boilMinute }) => kind !== "hop" && !(kind === "step" && boilMinute !== undefined));
  const last = chain.findLastIndex(({ isDone }) => isDone);
  const [line, next] = [chain[last], chain[last + 1]];
  if (!line || !next || (line.kind !== "step" && line.kind !== "stand") || line.doneAt === undefined || next.planned <= line.planned)
    return undefined;
  return timer(line, line.doneAt, line.doneAt + Math.round((next.planned - line.planned) * 86_400) * 1000);
}

const timer = ({ row, what, caution }: TimedLine, startedAt: number, endsAt: number, doneInIt: Timer["doneInIt"] = []): Timer => ({
  row,
  what,
  caution,
  startedAt,
  endsAt,
  doneInIt,
});
