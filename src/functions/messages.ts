import type { ChoiceParameter, Limits, NumberParameter, ListParameter, Slip } from "./describe";
import { quantity, isoDay, showQuantity, type QuantityName, type UnitSystem } from "./quantities";
import { scaleHint, textHint } from "./slips";

/**
 * Every error text of the functions layer, in one grammar: what was wrong, which argument, what is allowed.
 * `argument` is the name as the brewer sees it, with its row where it stands in a table.
 */
type Numeric = Pick<NumberParameter | ListParameter, "quantity" | "limits" | "hint"> & Pick<NumberParameter, "words">;

const inBrackets = (hint: string | undefined): string => (hint === undefined ? "" : ` (${hint})`);

export const messages = {
  notANumber: (argument: string, typed: unknown, { quantity: name, limits, words }: Numeric, units: UnitSystem): string =>
    `${argument} must be a number, not ${quote(typed)}; it must be ${limitText(name, limits, units)}${words === undefined ? "" : ` or one of: ${words.join(", ")}`}${inBrackets(textHint(typed, name, units))}`,
  notAChoice: (argument: string, typed: unknown, { choices, hint }: Pick<ChoiceParameter, "choices" | "hint">): string =>
    `${argument} is ${quote(typed)}; it must be one of: ${choices.join(", ")}${inBrackets(typeof typed === "string" ? hint?.(typed.trim().toLowerCase()) : undefined)}`,
  outsideLimits: (argument: string, typed: number, { quantity: name, limits, hint }: Numeric, units: UnitSystem): string =>
    `${argument} is ${asTyped(typed, name, units)}; it must be ${limitText(name, limits, units)}${inBrackets(hint?.(typed) ?? scaleHint(typed, name, limits, units))}`,
  outsideSource: (
    argument: string,
    coreValue: number,
    quantity: QuantityName,
    from: number,
    to: number,
    by: string,
    units: UnitSystem,
  ): string =>
    `${argument} is ${showQuantity(quantity, coreValue, units)}; ${by} covers ${showQuantity(quantity, from, units)} to ${showQuantity(quantity, to, units)}`,
  slip: (argument: string, typed: number, { quantity: name }: Numeric, { why, hint }: Slip, units: UnitSystem): string =>
    `${argument} is ${asTyped(typed, name, units)}; ${why} (${hint(typed)})`,
  looksEmpty: (argument: string): string =>
    `${argument} is 0 °C, which is also what an empty cell says; type 0.1 for beer at the freezing point of water`,
  oneCellOnly: (argument: string): string => `${argument} must be a single cell here, since the answer spills over several cells`,
  wrongWidth: (argument: string, width: number, layouts: readonly string[]): string =>
    `${argument} is ${width} ${width === 1 ? "column" : "columns"} wide; it must hold ${layouts.join(", or ")}`,
  oneColumn: (argument: string): string => `${argument} must be a single column or a single row`,
  tooFewCells: (argument: string): string =>
    `${argument} ends before this row or column; give it one cell, or as many as the longest of the ranges`,
  sameLength: (first: string, second: string): string => `${first} and ${second} must have the same number of cells`,
  noSuchFunction: (typed: string, example: string): string =>
    `function is ${quote(typed)}, and there is no such function; type its name as text, for example "${example}"`,
  takesRange: (name: string, argument: string): string =>
    `function is GYLE.${name}, which takes a range (${argument}); only functions of single cells have a ± here`,
  noNumber: (name: string): string => `function is GYLE.${name}, which does not answer with one number, so it has no ±`,
  tooManyArguments: (name: string, most: number): string => `arguments has more cells than GYLE.${name} has arguments (${most})`,
  badUncertainty: (argument: string, typed: unknown): string =>
    `uncertainties: the ± of ${argument} must be a number of 0 or more, not ${quote(typed)}`,
  nothingToVary: (argument: string): string => `uncertainties: ${argument} has a ± but no number; leave its ± blank`,
  internal: (name: string): string => `internal error in GYLE.${name}`,
};

export function limitText(name: QuantityName, limits: Limits, units: UnitSystem): string {
  if (name === "date")
    return limits.atLeast === undefined
      ? `a time of day, or a date up to ${isoDay(limits.atMost ?? 0)}`
      : `a date from ${isoDay(limits.atLeast)} to ${isoDay(limits.atMost ?? 0)}`;
  const show = (value: number): string => showQuantity(name, value, units);
  const { above, atLeast, below, atMost } = limits;
  // The unit once, behind the last number.
  const first = (value: number): string =>
    (atMost ?? below) === undefined ? show(value) : show(value).replace(` ${quantity(name).unit[units]}`, "");
  if (atLeast !== undefined && atMost !== undefined) return `from ${first(atLeast)} to ${show(atMost)}`;
  return [
    ...(atLeast === undefined ? [] : [`at least ${first(atLeast)}`]),
    ...(above === undefined ? [] : [`above ${first(above)}`]),
    ...(atMost === undefined ? [] : [`at most ${show(atMost)}`]),
    ...(below === undefined ? [] : [`below ${show(below)}`]),
  ].join(" and ");
}

/** The number as it stands in the cell, not rounded to the limit that it misses by a hair. */
function asTyped(typed: number, name: QuantityName, units: UnitSystem): string {
  const unit = name === "gravity" || name === "date" ? "" : quantity(name).unit[units];
  return `${String(Number(typed.toPrecision(12)))}${unit === "" ? "" : ` ${unit}`}`;
}

function quote(typed: unknown): string {
  if (typeof typed === "string") return `the text "${typed.length > 40 ? `${typed.slice(0, 40)}…` : typed}"`;
  if (typeof typed === "boolean") return typed ? "TRUE" : "FALSE";
  return typeof typed === "number" && Number.isFinite(typed) ? String(typed) : "what is there";
}
