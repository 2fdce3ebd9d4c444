import { quantity, type QuantityName } from "../../../../functions/quantities";
import { num, product } from "./formula-parts";

/** "metric", "us", or the text of a cell that says which. */
export type PlainUnits = { readonly fixed: "metric" | "us" } | { readonly asked: string };

const sameInBoth = (name: QuantityName): boolean => quantity(name).toCore(1, "us") === 1 && quantity(name).toCore(0, "us") === 0;
const usFactor = (name: QuantityName): number => quantity(name).toCore(1, "us") - quantity(name).toCore(0, "us");

/** `"us"` or `IF(units="us",…,…)`, whichever the sheet's unit system allows. */
export function byUnits(units: PlainUnits, metric: string, us: string): string {
  if ("fixed" in units) return units.fixed === "us" ? us : metric;
  return metric === us ? metric : `IF(${units.asked}="us",${us},${metric})`;
}

/** What a typed amount is multiplied by on its way to the core's unit; "1" where nothing changes. Not for temperatures. */
export const scale = (name: QuantityName, units: PlainUnits): string => (sameInBoth(name) ? "1" : byUnits(units, "1", num(usFactor(name))));

/** A typed number as text in the core's unit. */
export function toCoreText(name: QuantityName, typed: string, units: PlainUnits): string {
  if (name === "temperature") return byUnits(units, typed, `(${typed}-32)/1.8`);
  return product(typed, scale(name, units));
}

/** A number in the core's unit as text in the brewer's. */
export function fromCoreText(name: QuantityName, core: string, units: PlainUnits): string {
  if (sameInBoth(name)) return core;
  if (name === "temperature") return byUnits(units, core, `(${core})*1.8+32`);
  const factor = scale(name, units);
  return factor === "1" ? core : `(${core})/${factor}`;
}

/** A limit of the core's unit as it is typed, a hair wider in us units: no conversion may fall out of it. */
export function typedLimit(name: QuantityName, core: number, side: "low" | "high", units: PlainUnits): string {
  const hair = (side === "low" ? -1e-9 : 1e-9) * Math.max(1, Math.abs(core));
  const inUs = num(quantity(name).fromCore(core + hair, "us"));
  return sameInBoth(name) ? num(core) : byUnits(units, num(core), inUs);
}
