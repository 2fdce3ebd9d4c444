import type { Limits, NumberParameter, ListParameter } from "./describe";
import { showQuantity, type QuantityName, type UnitSystem } from "./quantities";

/**
 * Every error text of the functions layer, in one grammar: what was wrong, which argument, what is allowed.
 * `argument` is the name as the brewer sees it, with its row where it stands in a table.
 */
type Numeric = Pick<NumberParameter | ListParameter, "quantity" | "limits" | "hint">;

export const messages = {
  notANumber: (argument: string, typed: unknown): string => `${argument} must be a number, not ${quote(typed)}`,
  notAChoice: (argument: string, typed: unknown, choices: readonly string[]): string =>
    `${argument} is ${quote(typed)}; it must be one of: ${choices.join(", ")}`,
  outsideLimits: (argument: string, typed: number, coreValue: number, { quantity, limits, hint }: Numeric, units: UnitSystem): string => {
    const help = hint?.(typed);
    return `${argument} is ${showQuantity(quantity, coreValue, units)}; it must be ${limitText(quantity, limits, units)}${help ? ` (${help})` : ""}`;
  },
  outsideSource: (argument: string, coreValue: number, quantity: QuantityName, from: number, to: number, by: string, units: UnitSystem): string =>
    `${argument} is ${showQuantity(quantity, coreValue, units)}; ${by} covers ${showQuantity(quantity, from, units)} to ${showQuantity(quantity, to, units)}`,
  oneCellOnly: (argument: string): string => `${argument} must be a single cell here, since the answer spills over several cells`,
  wrongWidth: (argument: string, width: number, layouts: readonly string[]): string =>
    `${argument} is ${width} ${width === 1 ? "column" : "columns"} wide; it must hold ${layouts.join(", or ")}`,
  oneColumn: (argument: string): string => `${argument} must be a single column or a single row`,
  sameLength: (first: string, second: string): string => `${first} and ${second} must have the same number of cells`,
  noSuchFunction: (typed: string, example: string): string => `function is ${quote(typed)}, and there is no such function; type its name as text, for example "${example}"`,
  takesRange: (name: string, argument: string): string => `GYLE.${name} takes a range (${argument}); only functions of single cells have a ± here`,
  noNumber: (name: string): string => `GYLE.${name} does not answer with one number, so it has no ±`,
  tooManyArguments: (name: string, most: number): string => `arguments has more cells than GYLE.${name} has arguments (${most})`,
  badUncertainty: (argument: string, typed: unknown): string => `the ± of ${argument} must be a number of 0 or more, not ${quote(typed)}`,
  nothingToVary: (argument: string): string => `${argument} has a ± but no number; leave its ± blank`,
  internal: (name: string): string => `internal error in GYLE.${name}`,
};

export function limitText(quantity: QuantityName, limits: Limits, units: UnitSystem): string {
  const show = (value: number) => showQuantity(quantity, value, units);
  const lower = limits.atLeast !== undefined ? show(limits.atLeast) : limits.above !== undefined ? `above ${show(limits.above)}` : undefined;
  const upper = limits.atMost !== undefined ? show(limits.atMost) : limits.below !== undefined ? `below ${show(limits.below)}` : undefined;
  if (limits.atLeast !== undefined && limits.atMost !== undefined) return `from ${lower} to ${upper}`;
  if (lower !== undefined && upper !== undefined) return `${limits.atLeast !== undefined ? `at least ${lower}` : lower} and ${limits.atMost !== undefined ? `at most ${upper}` : upper}`;
  if (lower !== undefined) return limits.atLeast !== undefined ? `at least ${lower}` : lower;
  return limits.atMost !== undefined ? `at most ${upper}` : `${upper}`;
}

function quote(typed: unknown): string {
  if (typeof typed === "string") return `the text "${typed.length > 40 ? `${typed.slice(0, 40)}…` : typed}"`;
  if (typeof typed === "boolean") return typed ? "TRUE" : "FALSE";
  return String(typed);
}
