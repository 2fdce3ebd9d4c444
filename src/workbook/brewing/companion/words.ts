import { quantity, type QuantityName, type UnitSystem } from "../../../functions/quantities";

/* Numbers as the pane says them. */

/** "5.2 US gal", "64 °F": a number that is in the sheet's units already. */
export const shown = (value: number, name: QuantityName, units: UnitSystem, digits = quantity(name).digits): string =>
  [value.toFixed(digits), quantity(name).unit[units]].filter((part) => part !== "").join(" ");

export const gravityWords = (gravity: number): string => gravity.toFixed(3);
