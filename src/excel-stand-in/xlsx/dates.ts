const DAY_MS = 86_400_000;
/** Day 0 of the 1900 calendar. Excel counts a 29 February 1900 that never was, as day 60. */
const START_1900 = Date.UTC(1899, 11, 31);
const PHANTOM_DAY = 60;

/** The day number that Excel and the grid use for a date (UTC), from 1 January 1900 on. */
export function serialOfDate(date: Date): number {
  const days = (date.getTime() - START_1900) / DAY_MS;
  // Dates come in whole milliseconds; ten decimals keep those and drop the floating point dust.
  return Math.round((days >= PHANTOM_DAY ? days + 1 : days) * 1e10) / 1e10;
}

/** The day number of a date written as text, such as "2026-03-01", "2026/3/1" or "3/1/2026"; undefined if it is none. */
export function serialOfDateText(text: string): number | undefined {
  const iso = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})(?:[T ](\d{1,2}):(\d{2})(?::(\d{2}))?)?/.exec(text.trim());
  const american = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(text.trim());
  const [year, month, day] = iso ? [iso[1], iso[2], iso[3]] : american ? [american[3], american[1], american[2]] : [];
  if (!year) return undefined;
  const [hours = 0, minutes = 0, seconds = 0] = (iso?.slice(4, 7) ?? []).map((part) => Number(part ?? 0));
  return serialOfDate(new Date(Date.UTC(Number(year), Number(month) - 1, Number(day), hours, minutes, seconds)));
}
