import { gravityLimits } from "../../../core/wort/gravity-limits";
import type { AnyDescriptor, NumberParameter, Parameter } from "../../../functions/describe";
import { argumentName } from "../../../functions/describe";
import { callScalar } from "../../../functions/call";
import { functionNamed } from "../../../functions/registry";
import { quantity, type QuantityName, type UnitSystem } from "../../../functions/quantities";
import type { Cell } from "../../grid/evaluate/cells";
import type { Spread } from "./explanation";
import { showNumber, unitOf } from "./show-value";

/**
 * How well a home brewer's instruments read, in the core's units: absolute, or as a share of the reading. Common practice,
 * from memory, like the two that GYLE.GAUGE.SPREAD names. What is not in the list (a choice, a count, a date, a figure
 * off a packet) is taken as exact.
 */
const usual: Partial<Record<QuantityName, { readonly absolute: number } | { readonly share: number }>> = {
  gravity: { absolute: 0.002 },
  plato: { absolute: 0.5 },
  temperature: { absolute: 1 },
  volume: { share: 0.02 },
  bottleVolume: { share: 0.02 },
  doseVolume: { share: 0.05 },
  mass: { share: 0.01 },
  smallMass: { share: 0.03 },
  pressure: { absolute: 0.1 },
  volumePerHour: { share: 0.1 },
  flow: { share: 0.1 },
};

/** The ± of a parameter at this reading, in the brewer's own unit; undefined where it counts as exact. */
export function usualUncertainty(parameter: Parameter, typed: Cell | undefined, units: UnitSystem): number | undefined {
  if (parameter.kind !== "number" || typeof typed !== "number") return undefined;
  const found = usual[parameter.quantity === "number" ? scaleOf(parameter, typed) : parameter.quantity];
  if (found === undefined) return undefined;
  if ("share" in found) return rounded(Math.abs(typed) * found.share) || undefined;
  const { fromCore } = quantity(parameter.quantity);
  return rounded(fromCore(found.absolute, units) - fromCore(0, units));
}

/** A hydrometer's reading may be typed in either scale: which one, the number tells. */
const scaleOf = ({ doc }: NumberParameter, typed: number): QuantityName =>
  !/hydrometer|reading/i.test(doc) ? "number" : typed >= gravityLimits.atLeast && typed <= gravityLimits.atMost ? "gravity" : "plato";

const rounded = (value: number): number => Number(value.toPrecision(2));

/** The ± of one call over single cells, by GYLE.GAUGE.SPREAD itself; or why there is none. */
export function spreadOfCall(
  descriptor: AnyDescriptor,
  typed: readonly (Cell | undefined)[],
  units: UnitSystem,
): { readonly spread: Spread } | { readonly noSpread: string } | undefined {
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const uncertainties = parameters.map(([, parameter], index) => usualUncertainty(parameter, typed[index], units));
  const assumed = parameters.flatMap(([key, parameter], index) => {
    const uncertainty = uncertainties[index];
    return uncertainty === undefined
      ? []
      : [
          `${argumentName(key)} ± ${showNumber(uncertainty, (parameter as NumberParameter).quantity === "gravity" ? "gravity" : undefined)} ${unitOf(parameter, units)}`.trim(),
        ];
  });
  if (assumed.length === 0) return undefined;
  assumed.push(...ofTheEquation(descriptor, units));
  const answer = callScalar(functionNamed("GAUGE.SPREAD"), [
    descriptor.id,
    [parameters.map((_, index) => typed[index] ?? null)],
    [uncertainties.map((uncertainty) => uncertainty ?? "")],
  ]);
  if (typeof answer === "number") return { spread: { value: answer, assumed } };
  return typeof answer === "string" ? undefined : { noSpread: answer.message };
}

/** "the equation itself ± 0.002 SG (S. Terrill, 2011)", where its source says so. */
function ofTheEquation({ modelSpread, result }: AnyDescriptor, units: UnitSystem): string[] {
  if (modelSpread === undefined || result.kind !== "number") return [];
  const { unit, fromCore } = quantity(result.quantity);
  const shown = showNumber(
    rounded(fromCore(modelSpread.plusOrMinus, units) - fromCore(0, units)),
    result.quantity === "gravity" ? "gravity" : undefined,
  );
  return [`the equation itself ± ${`${shown} ${unit[units]}`.trim()} (${modelSpread.from})`];
}
