import { dayNumber } from "../../workbook/day-number";

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
export function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;
}
