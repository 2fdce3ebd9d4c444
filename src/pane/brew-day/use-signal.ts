import { useEffect, useRef } from "preact/hooks";
import { beep } from "./sound";

/**
 * Sounds once when the line that is due comes due while the screen is open, also when that fell into a sleep of the
 * computer. A line that was overdue already when it was first seen makes no sound.
 */
export function useSignal(line: { readonly row: number; readonly dueAt: number } | undefined, now: number, sound: boolean): void {
  const waiting = useRef<number>();
  useEffect(() => {
    if (!line) return;
    if (now < line.dueAt) waiting.current = line.row;
    else if (waiting.current === line.row) {
      waiting.current = undefined;
      if (sound) beep();
    }
  });
}
