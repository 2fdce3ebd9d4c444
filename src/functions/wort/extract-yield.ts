import { pureSugarPointsLPerKg, yieldPercentFromPoints } from "../../core/wort/extract-potential";
import { quantity, type UnitSystem } from "../quantities";
import { percentHint } from "../share-of-one";
import { percent } from "../vocabulary";

/**
 * Extract yield, % of the mass as it is. Malt, extract and sugar give 50 or more (Palmer, How to Brew, Table 9: black malt,
 * the poorest, 25 points, 54 %), pulp of fruit less than 20. Between them lies what malt lists print as points per pound
 * per US gallon, 25 to 46: taken for per cent, it would halve the gravity in silence.
 */
export const extractYield = (doc: string, typical: number) =>
  percent(doc, {
    limits: { above: 1, atMost: 100 },
    typical,
    hint: (typed) => percentHint(typed) ?? (typed <= pureSugarPointsLPerKg ? looksLikePoints(typed, "metric") : undefined),
    slip: { from: 20, below: 47, why: "no malt, extract or sugar gives 20 to 47 %", hint: (typed) => looksLikePoints(typed, "us") },
  });

function looksLikePoints(typed: number, units: UnitSystem): string {
  const percentMeant = yieldPercentFromPoints(quantity("points").toCore(typed, units)).toFixed(1);
  return `${typed} looks like points: GYLE.WORT.YIELD(${typed}${units === "us" ? ',"us"' : ""}) is ${percentMeant}`;
}
