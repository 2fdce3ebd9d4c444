/** One hydrometer reading: a time in days (since pitching, or an Excel day number) and a specific gravity. */
export interface Reading {
  readonly day: number;
  readonly gravity: number;
}

/** Above this, day numbers are dates (1902 and later), not days since pitching. */
const datesBegin = 1000;

/** Whether the times of a log are dates; then a 0 among them is an empty cell. */
export const isDated = (days: readonly (number | null)[]): boolean => days.some((day) => day !== null && day > datesBegin);

/**
 * The readings of two columns that stand side by side, in the order of time, whatever the order of the rows.
 *
 * A row without a gravity is no reading. Excel hands an empty date over as 0; beside real dates a 0 is such a row
 * and is left out, among days since pitching it is the day of pitching. Of two readings at the same moment the
 * higher stands first, so that the order of the rows cannot matter.
 *
 * @param days days since pitching or Excel day numbers; null for a heading
 * @param gravities specific gravities, as long as `days`; null where nothing was measured
 */
export function readingsInOrder(days: readonly (number | null)[], gravities: readonly (number | null)[]): Reading[] {
  const dated = isDated(days);
  return days
    .flatMap((day, row) => {
      const gravity = gravities[row] ?? null;
      return day === null || gravity === null || (dated && day === 0) ? [] : [{ day, gravity }];
    })
    .sort((one, other) => one.day - other.day || other.gravity - one.gravity);
}
