/** A keg under pressure is given as many days before it counts as ready (common practice, from memory). */
export const kegDays = 7;

/**
 * The state of a batch from its sheet alone, as a native formula without its equals sign. What the log says goes before
 * the calendar: a batch is planned until anything about it is noted, whatever its date. Its life is planned, brewing,
 * fermenting, almost there, finished, conditioning, ready, drunk up; "not begun", "stalled" and "read again" (the
 * gravity seems to have risen) come between.
 *
 * @param at the batch sheet, as it stands before a name
 * @param left cell that tells how many bottles are left; empty: not counted
 */
export function stateFormula(at: string, left: string): string {
  const readyOn = `IF(N(${at}first_taste)>0,${at}first_taste,${at}packaged_on+${kegDays})`;
  const packaged = `IF(AND(ISNUMBER(${left}),N(${left})<=0),"drunk up",IF(OR(N(${at}tasted_on)>0,season_today>=${readyOn}),"ready","conditioning"))`;
  const fermenting =
    `IF(${at}verdict="steady","finished",IF(${at}verdict="stalled","stalled",IF(${at}verdict="nearly","almost there",IF(${at}verdict="rising","read again",IF(${at}verdict="not begun","not begun",` +
    `IF(OR(COUNT(${at}readings)>0,N(${at}og_reading)>0),"fermenting",IF(COUNT(${at}happened)=0,"planned",IF(season_today>=INT(N(${at}brewed_on))+1,"fermenting","brewing"))))))))`;
  return `IF(N(${at}packaged_on)>0,${packaged},${fermenting})`;
}
