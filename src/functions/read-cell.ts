import { ArgumentProblem, CellError } from "./cell-error";
import type { ChoiceParameter, Limits, ListParameter, NumberParameter } from "./describe";
import { messages } from "./messages";
import { quantity, type UnitSystem } from "./quantities";

/** Stands for a cell that is not filled in yet. */
export const missing = Symbol("missing");
export type Missing = typeof missing;

/** Excel hands an empty cell over as 0, null or "" depending on the platform; 0 is told apart by each parameter. */
export const isEmpty = (typed: unknown): boolean =>
  typed === null || typed === undefined || (typeof typed === "string" && typed.trim() === "");

function refuseErrors(typed: unknown): void {
  if (typed instanceof CellError) throw new ArgumentProblem(typed.code, typed.message);
}

/** A number in the core's unit, or `missing`; throws `ArgumentProblem` for anything else. */
export function readNumber(
  argument: string,
  typed: unknown,
  parameter:
    Pick<NumberParameter, "quantity" | "limits" | "hint" | "blank" | "zero" | "covered" | "default" | "slip" | "words"> | ListParameter,
  units: UnitSystem,
): number | Missing {
  refuseErrors(typed);
  if (isEmpty(typed)) return parameter.blank === "zero" ? emptyAsZero(parameter) : missing;
  if (typeof typed !== "number" || !Number.isFinite(typed))
    throw new ArgumentProblem("#VALUE!", messages.notANumber(argument, typed, parameter, units));
  if (typed === 0 && parameter.blank === "missing") {
    if ("zero" in parameter && units === "metric") throw new ArgumentProblem("#VALUE!", messages.looksEmpty(argument));
    return missing;
  }
  const coreValue = quantity(parameter.quantity).toCore(typed, units);
  if (!within(coreValue, parameter.limits)) {
    throw new ArgumentProblem("#VALUE!", messages.outsideLimits(argument, typed, parameter, units));
  }
  const slip = "slip" in parameter ? parameter.slip : undefined;
  if (slip && coreValue >= slip.from && coreValue < slip.below)
    throw new ArgumentProblem("#VALUE!", messages.slip(argument, typed, parameter, slip, units));
  const covered = "covered" in parameter ? parameter.covered : undefined;
  if (covered && (coreValue < covered.from - 1e-9 || coreValue > covered.to + 1e-9)) {
    throw new ArgumentProblem(
      "#N/A",
      messages.outsideSource(argument, coreValue, parameter.quantity, covered.from, covered.to, covered.by, units),
    );
  }
  return coreValue;
}

/**
 * `readNumber` for one argument, prepared: a number well inside its limits and its source's range, which nearly all are,
 * passes with two comparisons; everything else goes the long way.
 */
export function numberReader(argument: string, parameter: NumberParameter, units: UnitSystem): (typed: unknown) => number | Missing {
  const { toCore } = quantity(parameter.quantity);
  const [low, high] = innerRange(parameter);
  return (typed) => {
    if (typeof typed === "number" && typed !== 0) {
      const coreValue = toCore(typed, units);
      if (coreValue > low && coreValue < high) return coreValue;
    }
    return readNumber(argument, typed, parameter, units);
  };
}

/** Between these two, both left out, a number is surely allowed and covered, and no slip. */
function innerRange({
  limits: { above, atLeast, below, atMost },
  covered,
  slip,
}: Pick<NumberParameter, "limits" | "covered" | "slip">): [number, number] {
  return [
    Math.max(above ?? -Infinity, atLeast ?? -Infinity, covered?.from ?? -Infinity, slip?.below ?? -Infinity),
    Math.min(below ?? Infinity, atMost ?? Infinity, covered?.to ?? Infinity),
  ];
}

/** An argument left out (null) takes its default; so does an empty text. A number 0 never comes here. */
function emptyAsZero(parameter: { default?: number } | ListParameter): number {
  return "default" in parameter && parameter.default !== undefined ? parameter.default : 0;
}

/** A hair of tolerance, so that a limit typed in the other unit system still counts as inside. */
function within(value: number, { above, atLeast, below, atMost }: Limits): boolean {
  const hair = 1e-9 * Math.max(1, Math.abs(value));
  return (
    (above === undefined || value > above) &&
    (atLeast === undefined || value >= atLeast - hair) &&
    (below === undefined || value < below) &&
    (atMost === undefined || value <= atMost + hair)
  );
}

export function readChoice(argument: string, typed: unknown, parameter: ChoiceParameter): string | Missing {
  refuseErrors(typed);
  if (isEmpty(typed) || typed === 0) return missing;
  const wanted = String(typed).trim().toLowerCase();
  const found = parameter.choices.find((choice) => choice.toLowerCase() === wanted);
  if (found === undefined) throw new ArgumentProblem("#VALUE!", messages.notAChoice(argument, typed, parameter));
  return found;
}

/** Words as typed; a number counts as the word it shows. */
export function readText(typed: unknown): string | Missing {
  refuseErrors(typed);
  return isEmpty(typed) || typed === 0 ? missing : String(typed);
}
