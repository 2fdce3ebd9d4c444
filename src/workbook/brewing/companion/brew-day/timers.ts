import type { TimedLine } from "./day-lines";

/** Something that runs: a step that takes its time, the boil, or what lies in the boil. All times are instants. */
export interface Timer {
  readonly row: number;
  readonly what: string;
  readonly caution: string;
  readonly startedAt: number;
  readonly endsAt: number;
  /** In the boil, what counts is also how long it has been in. */
  readonly inBoil: boolean;
}

/** Every timer that runs, the one that ends first on top. Lines without a real time have none. */
export function runningTimers(lines: readonly TimedLine[]): Timer[] {
  return [...boilTimers(lines), ...stepTimer(lines)].sort((one, other) => one.endsAt - other.endsAt);
}

/** The boil, and every hop and vessel that lies in it, until flame-out. */
function boilTimers(lines: readonly TimedLine[]): Timer[] {
  const begin = lines.find(({ kind }) => kind === "boil begins");
  const out = lines.find(({ kind }) => kind === "flame out");
  if (begin?.doneAt === undefined || !out || lines.slice(out.row).some(({ isDone }) => isDone)) return [];
  const inIt = lines.filter(
    ({ row, doneAt, boilMinute }) => row > begin.row && row < out.row && doneAt !== undefined && boilMinute !== undefined,
  );
  return [begin, ...inIt].flatMap((line) => (line.doneAt === undefined ? [] : [timer(line, line.doneAt, out.dueAt, line !== begin)]));
}

/** Steps before and after the boil follow one another, so at most one of them runs. */
function stepTimer(lines: readonly TimedLine[]): Timer[] {
  const chain = lines.filter(({ kind, boilMinute }) => kind !== "hop" && !(kind === "step" && boilMinute !== undefined));
  const last = chain.findLastIndex(({ isDone }) => isDone);
  const [line, next] = [chain[last], chain[last + 1]];
  if (!line || !next || (line.kind !== "step" && line.kind !== "stand") || line.doneAt === undefined || next.planned <= line.planned)
    return [];
  return [timer(line, line.doneAt, line.doneAt + Math.round((next.planned - line.planned) * 86_400) * 1000, false)];
}

function timer({ row, what, caution }: TimedLine, startedAt: number, endsAt: number, inBoil: boolean): Timer {
  return { row, what, caution, startedAt, endsAt, inBoil };
}
