import { dayNumberOf, onTheWall } from "../../grid/words/day-number";

/**
 * The clock on the wall and the sheet's day numbers, which say what that clock showed. Lengths of time are calculated
 * between instants (milliseconds since 1970), never between day numbers: on the night when clocks are put forward or
 * back, a boil of an hour still takes an hour.
 */

/** The instant at which a clock in this computer's time zone shows a day number. A time that is skipped counts as an hour later. */
export function instantOf(dayNumber: number): number {
  const shown = onTheWall(dayNumber, "second");
  return new Date(
    shown.getUTCFullYear(),
    shown.getUTCMonth(),
    shown.getUTCDate(),
    shown.getUTCHours(),
    shown.getUTCMinutes(),
    shown.getUTCSeconds(),
  ).getTime();
}

/** What the clock shows at an instant, as a day number to the whole second. */
export function dayNumberAt(instant: number): number {
  const shown = new Date(instant);
  const asUtc = Date.UTC(shown.getFullYear(), shown.getMonth(), shown.getDate(), shown.getHours(), shown.getMinutes(), shown.getSeconds());
  return dayNumberOf(asUtc);
}

/** The time of day at an instant as the fraction of a day that Excel formats as hh:mm. */
export function timeOfDayAt(instant: number): number {
  const shown = new Date(instant);
  return (shown.getHours() * 3600 + shown.getMinutes() * 60 + shown.getSeconds()) / 86_400;
}

/** The first instant from `earliest` on at which the clock shows this time of day. */
export function nextInstantAt(timeOfDay: number, earliest: number): number {
  const day = Math.floor(dayNumberAt(earliest));
  const today = instantOf(day + timeOfDay);
  return today >= earliest ? today : instantOf(day + 1 + timeOfDay);
}
