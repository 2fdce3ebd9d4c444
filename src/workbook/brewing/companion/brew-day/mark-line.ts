import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { notesWith, notesWithout } from "../append-note";
import { changeCells } from "../change-cells";
import { ChangeRefused } from "../outcome";
import { dayNumberAt, timeOfDayAt } from "../wall-clock";
import type { DayLine } from "./day-lines";

/**
 * Writes the real time beside a line whose cell is still empty.
 *
 * @param noted goes below the batch's notes
 */
export async function markDone(context: Excel.RequestContext, seen: BatchSheet, line: DayLine, now: number, noted?: string): Promise<void> {
  if (line.happened !== "") throw new ChangeRefused(`"${line.what}" has its time already.`);
  await changeCells(context, seen, [
    { name: "happened", row: line.row, label: `the time beside "${line.what}"`, content: timeOfDayAt(now) },
    ...(noted === undefined ? [] : [notesWith(seen, noted)]),
  ]);
}

/** Clears a time that was written by `markDone`, provided that it still stands there; and what was noted with it, if the notes still end so. */
export async function takeBackDone(
  context: Excel.RequestContext,
  seen: BatchSheet,
  line: DayLine,
  written: number,
  noted?: string,
): Promise<void> {
  if (typeof line.happened !== "number" || Math.abs(line.happened - written) > 1e-9)
    throw new ChangeRefused(`The time beside "${line.what}" is not the one that was written here.`);
  await changeCells(context, seen, [
    { name: "happened", row: line.row, label: `the time beside "${line.what}"`, content: "" },
    ...(noted === undefined ? [] : notesWithout(seen, noted)),
  ]);
}

/** Moves the brew day to the day that the clock shows. */
export async function brewToday(context: Excel.RequestContext, seen: BatchSheet, now: number): Promise<void> {
  await changeCells(context, seen, [{ name: "brewed_on", label: "the date of the brew day", content: Math.floor(dayNumberAt(now)) }]);
}
