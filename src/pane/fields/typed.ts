import { dayNumber, isoDay } from "../../workbook/grid/words/day-number";
import { todayNumber } from "../parts/today-number";

/** A decimal comma is as good as a point; undefined where it is no number. */
export function typedNumber(text: string): number | undefined {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() !== "" && Number.isFinite(value) ? value : undefined;
}

export function typedDay(text: string): number | undefined {
  try {
    return dayNumber(text);
  } catch {
    return undefined;
  }
}

/** Today on the calendar of this place, as a date field wants it. */
export const today = (): string => isoDay(todayNumber());
