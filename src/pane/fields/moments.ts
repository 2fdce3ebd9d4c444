import { dayNumber, isoDay, onTheWall } from "../../workbook/grid/words/day-number";
import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";

/* Day numbers in the browser's date and time fields. */

/** "2026-09-08T18:30", to the nearest minute. */
export const momentField = (number: number): string => onTheWall(number).toISOString().slice(0, 16);

/** To the whole minute. */
export const nowField = (): string => momentField(Math.floor(dayNumberAt(Date.now()) * 1440 + 1e-6) / 1440);

/** The day number in a date field, or a field with date and time; "" where it is not filled in. */
export function fieldMoment(text: string): number | "" {
  try {
    return dayNumber(text.slice(0, 16));
  } catch {
    return "";
  }
}

export const dayField = (number: number | ""): string => (number === "" ? "" : isoDay(number));
