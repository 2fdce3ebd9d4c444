import { quantities, type QuantityName, type UnitSystem } from "../../functions/quantities";

/** The units that a batch sheet shows, for one unit system: those of the quantities, and what colours are told in. */
export interface UnitWords extends Readonly<Record<QuantityName, string>> {
  readonly units: UnitSystem;
  readonly colour: string;
  readonly maltColour: string;
}

export const unitWords = (units: UnitSystem): UnitWords => ({
  ...(Object.fromEntries(Object.entries(quantities).map(([name, { unit }]) => [name, unit[units]])) as Record<QuantityName, string>),
  units,
  colour: units === "us" ? "SRM" : "EBC",
  maltColour: units === "us" ? "°L" : "EBC",
});
