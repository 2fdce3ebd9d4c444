import { useEffect, useRef } from "preact/hooks";
import type { TimedLine } from "../../workbook/companion/brew-day/day-state";
import { beep } from "./sound";

/**
 * Sounds once when a line comes due while the screen is open, also when that fell into a sleep of the computer, and also
 * while an earlier one still waits to be marked: in the boil nothing waits for it. A timer ends when the line after it is
 * due. What was overdue already when it was first seen makes no sound.
 */
export function useDueSound(lines: readonly TimedLine[], now: number, sound: boolean): void {
  const waiting = useRef(new Set<number>());
  useEffect(() => {
    const toCome = lines.filter(({ isDone }) => !isDone);
    const comeDue = toCome.some(({ row, dueAt }) => now >= dueAt && waiting.current.has(row));
    waiting.current = new Set(toCome.filter(({ dueAt }) => now < dueAt).map(({ row }) => row));
    if (comeDue && sound) void beep();
  });
}
