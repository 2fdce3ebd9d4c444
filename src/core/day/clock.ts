import { BrewingError } from "../brewing-error";

/** The first day number that passes for a date: 1 January 1990. Anything from 1 up to here is a slip, such as 9 for 9:00. */
export const firstDate = 32874;

/**
 * Checks the start of a brew day: a day number with its time as the fraction, or a bare time of day between 0 and 1.
 *
 * @throws BrewingError "impossible" for a number that is neither
 */
export function requireStart(start: number): number {
  if (start >= 1 && start < firstDate) {
    throw new BrewingError("impossible", `start is ${start}; type a time of day such as 9:00, or a date from 1990 on with its time`);
  }
  return start;
}

/** The day number of a minute after the start; whole minutes land on whole minutes of the clock. */
export function clockAt(start: number, minute: number): number {
  return start + minute / 1440;
}
