import { useEffect } from "preact/hooks";
import type { TimedLine } from "../../workbook/brewing/companion/brew-day/day-lines";
import { beep } from "./sound";

/** Lines of one batch that were seen while still to come; it outlives a change of screens. */
let seen: { readonly batch: string; readonly waiting: ReadonlySet<number> } = { batch: "", waiting: new Set() };

/**
 * Sounds once when a line comes due while the pane is open, also when that fell into a sleep of the computer, and also
 * while an earlier one still waits to be marked: in the boil nothing waits for it. A timer ends when the line after it is
 * due. What was overdue already when it was first seen makes no sound.
 */
export function useDueSound(batch: string, lines: readonly TimedLine[], now: number, sound: boolean): void {
  useEffect(() => {
    if (lines.length === 0) return;
    const toCome = lines.filter(({ isDone }) => !isDone);
    const comeDue = seen.batch === batch && toCome.some(({ row, dueAt }) => now >= dueAt && seen.waiting.has(row));
    seen = { batch, waiting: new Set(toCome.filter(({ dueAt }) => now < dueAt).map(({ row }) => row)) };
    if (comeDue && sound) void beep();
  });
}
