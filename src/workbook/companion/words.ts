import { quantity, type QuantityName, type UnitSystem } from "../../functions/quantities";
import { onTheWall } from "../day-number";

/* Numbers and days as the pane says them. */

/** "5.2 US gal", "64 °F": a number that is in the sheet's units already. */
export const shown = (value: number, name: QuantityName, units: UnitSystem, digits = quantity(name).digits): string =>
  [value.toFixed(digits), quantity(name).unit[units]].filter((part) => part !== "").join(" ");

export const gravityWords = (gravity: number): string => gravity.toFixed(3);

const utc = { timeZone: "UTC" } as const;
const dayWords = new Intl.DateTimeFormat("en-GB", { ...utc, weekday: "short", day: "numeric", month: "short" });
const timeWords = new Intl.DateTimeFormat("en-GB", { ...utc, hour: "2-digit", minute: "2-digit" });

/** "Sat 5 Sep" */
export const dayShown = (dayNumber: number): string => dayWords.format(onTheWall(dayNumber)).replace(",", "");

/** "Sat 5 Sep, 18:30" */
export const momentShown = (dayNumber: number): string => `${dayShown(dayNumber)}, ${timeWords.format(onTheWall(dayNumber))}`;

/** Several sentences as one text, without the empty ones. */
export const sentences = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join(" ");
