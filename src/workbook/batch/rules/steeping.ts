import type { UnitSystem } from "../../../functions/quantities";
import type { UnitWords } from "../unit-words";
import { rule, type CheckLine } from "./rule";
import { text, unusable } from "./words";

/** The grain's mass shows an error, in a steep or a mash. */
export const grainUnknown = rule("grain-unknown", "ISERROR(grain_mass)", "The grain cannot be calculated:", "look at the malt table.");

/** Warmer than hand-warm, cooler than what draws tannin out of the husks: beyond them it is the other scale, or a slip (the upper ends common practice, the lower ones our judgement). */
const steepLimits: Readonly<Record<UnitSystem, readonly [lowest: number, highest: number]>> = { us: [100, 170], metric: [38, 77] };

export function steepingLine(units: UnitSystem, words: UnitWords): CheckLine {
  const [lowest, highest] = steepLimits[units];
  return {
    id: "steeping",
    label: "Steeping",
    weight: "look",
    steps: [
      ...unusable("soak_temperature", "Steep at", "allowed"),
      ...unusable("soak_minutes", "Steep for"),
      grainUnknown,
      rule(
        "too-hot",
        `N(soak_temperature)>${highest}`,
        text(`Steeping above ${highest} ${words.temperature} draws harsh taste out of the husks.`),
      ),
      rule(
        "too-cool",
        `AND(grain_mass>0,N(soak_temperature)>0,N(soak_temperature)<${lowest})`,
        `"Steeping at "&soak_temperature&" ${words.temperature} draws next to nothing out of the grain."${units === "us" ? '&" Is that °C?"' : ""}`,
      ),
      rule("too-long", "AND(grain_mass>0,N(soak_minutes)>45)", "Steeped longer than needed: half an hour does."),
    ],
  };
}
