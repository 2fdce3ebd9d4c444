/**
 * Excel's day numbers (1900 date system): 1 January 1970 is 25569. Valid from 1 March 1900 on; the time of day is the
 * fraction. No time zone comes into it: a day number is what the calendar on the wall says.
 */
const epoch = 25569;
export const millisecondsPerDay = 86_400_000;

/** "2026-09-05" or "2026-09-05T14:40" → day number; throws on anything else. */
export function dayNumber(iso: string): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?$/.exec(iso);
  if (!match) throw new Error(`"${iso}" is not a date such as 2026-09-05`);
  const [year, month, day, hour, minute] = match.slice(1).map((part) => Number(part ?? 0)) as [number, number, number, number, number];
  const milliseconds = Date.UTC(year, month - 1, day, hour, minute);
  if (new Date(milliseconds).toISOString().slice(0, 10) !== iso.slice(0, 10)) throw new Error(`there is no day ${iso.slice(0, 10)}`);
  return dayNumberOf(milliseconds);
}

/** The day number of a count of milliseconds since 1970, both of the same clock. */
export const dayNumberOf = (milliseconds: number): number => epoch + milliseconds / millisecondsPerDay;

/** The other way: milliseconds from 1970 to a day number, by the same clock. */
export const millisecondsSince1970 = (day: number): number => (day - epoch) * millisecondsPerDay;

/** A day number carried in the UTC fields of a Date, to the whole minute or, if asked, second: what the clock on the wall says. */
export function onTheWall(day: number, to: "minute" | "second" = "minute"): Date {
  const seconds = to === "minute" ? 60 : 1;
  return new Date(Math.round(((day - epoch) * 86_400) / seconds) * seconds * 1000);
}

export { isoDay } from "../../../functions/quantities";
