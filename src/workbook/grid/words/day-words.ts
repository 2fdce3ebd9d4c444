import { onTheWall } from "./day-number";

/* Days and moments as the pane says them, from Excel's day numbers: one way for each purpose. */

const words = (parts: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat("en-GB", { timeZone: "UTC", ...parts });
const shortWords = words({ day: "numeric", month: "short" });
const dayWords = words({ weekday: "short", day: "numeric", month: "short" });
const timeWords = words({ hour: "2-digit", minute: "2-digit", hourCycle: "h23" });

/** "Jan" to "Dec", as every day in words has them: "Sept" has four letters. */
export const monthsShort = Array.from({ length: 12 }, (_, month) => words({ month: "short" }).format(new Date(Date.UTC(2026, month, 1))));

/** "13:54" */
export const timeShown = (day: number): string => timeWords.format(onTheWall(day));

/** The midnight of a day that a moment lies in; what arithmetic left a hair before midnight is midnight. */
const midnightOf = (day: number): Date => onTheWall(Math.floor(day + 1e-6));

/** "5 Sept": where there is little room, in tables and on axes. */
export const dayShort = (day: number): string => shortWords.format(midnightOf(day));

/** "Sat 5 Sept" */
export const dayShown = (day: number): string => dayWords.format(midnightOf(day)).replace(",", "");

/** "Sat 5 Sept, 18:30", to the nearest minute: half a minute before midnight it is the next day, 00:00. */
export function momentShown(day: number): string {
  const shown = onTheWall(day);
  return `${dayWords.format(shown).replace(",", "")}, ${timeWords.format(shown)}`;
}
