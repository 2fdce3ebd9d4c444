import type { UnitSystem } from "../../../functions/quantities";
import type { Method, StepLine } from "../contents";
import type { BlockKey } from "../fields/blocks";
import { ourSteps } from "../sheet/steps";

/**
 * Edited steps for another unit system: words of ours that were left as they are come in the new units; words of the
 * brewer's own stay, since nobody can convert a sentence (`stepsToReword` names those that speak of the old units).
 */
export function translatedSteps(
  steps: readonly StepLine[],
  method: Method,
  blocks: readonly BlockKey[],
  from: UnitSystem,
  to: UnitSystem,
): StepLine[] {
  const [before, after] = [ourSteps(method, from, blocks), ourSteps(method, to, blocks)];
  const inNewUnits = <Field extends "what" | "caution" | "why">(field: Field, value: StepLine[Field]): StepLine[Field] => {
    const index = before.findIndex((line) => line[field] === value);
    return after[index]?.[field] ?? value;
  };
  return steps.map((line) => ({
    ...line,
    what: inNewUnits("what", line.what),
    caution: inNewUnits("caution", line.caution),
    why: inNewUnits("why", line.why),
  }));
}

const wordsOf: Readonly<Record<UnitSystem, RegExp>> = {
  us: /(°F|\bgal(lons?)?\b|\blbs?\b|\boz\b|\bounces?\b|\bpounds?\b|\bpsi\b)/i,
  metric: /(°C|\d\s*(L|mL|kg|g)\b|"\s*(L|mL|kg|g)\b|\blit(re|er)s?\b|\bgrams?\b|\bkilo(gram)?s?\b|\bbar\b)/,
};

/** Numbers, from 1, of the steps whose own words still speak of other units than the sheet's. */
export function stepsToReword(steps: readonly StepLine[] | undefined, units: UnitSystem): number[] {
  const foreign = wordsOf[units === "us" ? "metric" : "us"];
  return (steps ?? []).flatMap(({ what, caution, why }, index) =>
    [what, caution, why].some((text) => foreign.test(String(text))) ? [index + 1] : [],
  );
}
