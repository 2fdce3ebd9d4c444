import { gravityLimits } from "../../../core/wort/gravity-limits";
import { askNumber } from "../../batch/figures/ask";
import { quantity } from "../../../functions/quantities";
import type { TextTable } from "./parse-table";
import { readDecimal } from "./read-decimal";
import { readMoment, type WallClock } from "./read-moment";
import type { LogChoices } from "./recognise";
import { spikes } from "./spikes";

export interface LogRow {
  /** Day number on the wall clock. */
  readonly when: number;
  /** SG. */
  readonly gravity: number;
  readonly temperatureC: number | undefined;
  /** Line in the file, from 1. */
  readonly line: number;
}

export interface LeftOut {
  readonly line: number;
  readonly reason: string;
}

export interface Log {
  /** In the order of time. */
  readonly rows: readonly LogRow[];
  /** Every row that is not used, with the reason: nothing is left out silently. */
  readonly leftOut: readonly LeftOut[];
}

/** All usable rows of the table. Doubles (same minute, same gravity) are dropped, and what cannot be is named. */
export function readLog({ rows, firstLine }: TextTable, choices: LogChoices, wallClock: WallClock): Log {
  const leftOut: LeftOut[] = [];
  const read: LogRow[] = [];
  const inThousandths = mostly(
    rows.map((cells) => readDecimal(cells[choices.gravity] ?? "")),
    (value) => value > 900,
  );
  rows.forEach((cells, index) => {
    const line = firstLine + index;
    const row = readRow(cells, choices, inThousandths, wallClock);
    if (typeof row === "string") leftOut.push({ line, reason: row });
    else read.push({ ...row, line });
  });
  read.sort((a, b) => a.when - b.when);
  const seen = new Set<string>();
  const single = read.filter((row) => {
    const key = `${Math.round(row.when * 1440)} ${row.gravity.toFixed(4)}`;
    if (seen.has(key)) leftOut.push({ line: row.line, reason: "the same reading stands there already" });
    return !seen.has(key) && seen.add(key);
  });
  const outliers = spikes(single.map(({ gravity }) => gravity));
  for (const index of outliers) {
    const row = single[index];
    if (row) leftOut.push({ line: row.line, reason: `${row.gravity.toFixed(3)} stands far off the readings before and after it` });
  }
  return { rows: single.filter((_, index) => !outliers.has(index)), leftOut: leftOut.sort((a, b) => a.line - b.line) };
}

function readRow(
  cells: readonly string[],
  choices: LogChoices,
  inThousandths: boolean,
  wallClock: WallClock,
): Omit<LogRow, "line"> | string {
  const date = cells[choices.when] ?? "";
  const moment = choices.time < 0 ? date : `${date} ${cells[choices.time] ?? ""}`;
  const when = readMoment(moment, choices.order, choices.zone, wallClock);
  if (when === undefined) return `“${moment.trim().slice(0, 40)}” is no date`;
  const typed = cells[choices.gravity] ?? "";
  const number = readDecimal(typed);
  if (number === undefined) return typed === "" ? "no gravity" : `“${typed.slice(0, 40)}” is no gravity`;
  const gravity = choices.scale === "P" ? askNumber("WORT.SG", number) : inThousandths ? number / 1000 : number;
  if (gravity === undefined || gravity < gravityLimits.atLeast || gravity > gravityLimits.atMost)
    return `${number} ${choices.scale === "P" ? "°P" : "SG"} cannot be: from ${gravityLimits.atLeast.toFixed(3)} to ${gravityLimits.atMost.toFixed(3)} SG is possible`;
  const degrees = readDecimal(cells[choices.temperature] ?? "");
  return {
    when,
    gravity,
    temperatureC: degrees === undefined ? undefined : quantity("temperature").toCore(degrees, choices.degrees === "F" ? "us" : "metric"),
  };
}

/** Whether the column is written that way; one row alone, such as a device's 999 for "no reading", does not tell. */
function mostly(values: readonly (number | undefined)[], is: (value: number) => boolean): boolean {
  const numbers = values.filter((value) => value !== undefined);
  return numbers.filter(is).length > numbers.length / 2;
}
