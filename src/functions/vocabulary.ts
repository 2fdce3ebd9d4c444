import { gravityLimits } from "../core/wort/gravity-limits";
import type { ChoiceParameter, Limits, ListParameter, NumberParameter } from "./describe";
import { ownEntry } from "./own-entry";
import type { QuantityName } from "./quantities";

/**
 * The parameters that recur, described once so that "temperature" reads and behaves the same everywhere.
 * Limits and usual values are in the core's units (L, kg, °C, bar, min).
 */
type Overrides = Partial<Omit<NumberParameter, "kind" | "quantity">>;

/** A number with a quantity of its own; the shorthand ones below give the usual limits. */
export function number<const O extends Overrides & { doc: string; limits: Limits; typical: number }>(
  quantity: QuantityName,
  options: O,
): NumberParameter & O & { kind: "number" } {
  return { kind: "number", quantity, blank: "missing", ...options };
}

/** Makes a parameter optional; `fallback` (core unit) is used when it is left out. */
export function optional<const P extends { doc: string }, const D extends number | string>(
  parameter: P,
  fallback: D,
): P & { optional: true; default: D } {
  return { ...parameter, optional: true, default: fallback };
}

/** Makes a parameter optional with no fallback: `compute` gets `undefined`. */
export function omissible<const P extends { doc: string }>(parameter: P): P & { optional: true } {
  return { ...parameter, optional: true };
}

/** 1050 for 1.050: also what a spreadsheet with a decimal comma makes of 1.050. */
export const looksLikeThousands = (typed: number): string | undefined =>
  typed > 900 && typed < 1200 ? `write it as ${(typed / 1000).toFixed(3)}, with the decimal sign of your spreadsheet` : undefined;

function looksLikeGravity(typed: number): string | undefined {
  if (typed > gravityLimits.atMost && typed <= 40) return `${typed} looks like °P: wrap it in GYLE.WORT.SG(${typed})`;
  if (typed > 40 && typed <= 200) return `${typed} looks like points: write ${(1 + typed / 1000).toFixed(3)}`;
  return looksLikeThousands(typed);
}

export const gravity = (doc: string, overrides: Overrides = {}) =>
  number("gravity", { doc, limits: gravityLimits, typical: 1.05, hint: looksLikeGravity, ...overrides });

export const volume = (doc: string, overrides: Overrides = {}) =>
  number("volume", { doc, limits: { above: 0, atMost: 10000 }, typical: 20, ...overrides });

export const mass = (doc: string, overrides: Overrides = {}) =>
  number("mass", { doc, limits: { above: 0, atMost: 5000 }, typical: 3, ...overrides });

export const smallMass = (doc: string, overrides: Overrides = {}) =>
  number("smallMass", { doc, limits: { above: 0, atMost: 50000 }, typical: 30, ...overrides });

/**
 * A temperature of the brewery. 0 °C counts as "not filled in yet", since Excel hands an empty cell over as 0;
 * in °F an empty cell is below every limit that is set here, and counts the same.
 */
export const temperature = (doc: string, limits: { atLeast: number; atMost: number }, typical: number, overrides: Overrides = {}) =>
  number("temperature", { doc, limits, typical, ...overrides });

/** A boil, or a stand after it: nobody boils longer (our judgement). */
export const boilLimits = { atLeast: 0, atMost: 240 } as const;

export const minutes = (doc: string, overrides: Overrides = {}) =>
  number("minutes", { doc, limits: { atLeast: 0, atMost: 1440 }, typical: 60, blank: "zero", ...overrides });

export const percent = (doc: string, overrides: Overrides = {}) =>
  number("percent", { doc, limits: { above: 0, atMost: 100 }, typical: 75, ...overrides });

export const co2 = (doc: string, overrides: Overrides = {}) =>
  number("co2", { doc, limits: { above: 0, atMost: 10 }, typical: 2.4, ...overrides });

/**
 * One of a few words. Capital letters do not matter when it is typed.
 *
 * @param otherNames what the trade also calls one of them, in small letters: refused, but with the word that is wanted
 */
export function choice<const C extends string>(
  doc: string,
  choices: readonly C[],
  otherNames: Readonly<Record<string, C>> = {},
): ChoiceParameter<C> {
  return { kind: "choice", doc, choices, hint: (typed) => meantWord(typed, choices, otherNames) };
}

function meantWord(typed: string, choices: readonly string[], otherNames: Readonly<Record<string, string>>): string | undefined {
  const begun = (one: string, other: string): boolean => other.length >= 2 && one.startsWith(other);
  const meant = ownEntry(otherNames, typed) ?? choices.find((word) => begun(word.toLowerCase(), typed) || begun(typed, word.toLowerCase()));
  return meant === undefined ? undefined : `did you mean "${meant}"?`;
}

export function list(
  quantity: QuantityName,
  doc: string,
  options: { limits: Limits; typical: number } & Partial<ListParameter>,
): ListParameter {
  return { kind: "list", quantity, doc, blank: "missing", ...options };
}

export const gravities = (doc: string): ListParameter =>
  list("gravity", doc, { limits: gravityLimits, typical: 1.02, hint: looksLikeGravity });

/** Imperial gallons are a fifth larger than US ones, so "imperial" is not among them. */
const otherUnitWords = {
  si: "metric",
  m: "metric",
  eu: "metric",
  l: "metric",
  litres: "metric",
  liters: "metric",
  usa: "us",
  american: "us",
  customary: "us",
  gal: "us",
  gallons: "us",
  "us gal": "us",
} as const;

/** The last argument wherever masses, volumes, temperatures or pressures go in or out. */
export const units = optional(
  choice("Unit system: metric (L, kg, g, °C, bar) or us (US gal, lb, oz, °F, psi).", ["metric", "us"], otherUnitWords),
  "metric",
);
