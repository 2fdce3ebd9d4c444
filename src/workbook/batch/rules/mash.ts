import type { UnitSystem } from "../../../functions/quantities";
import { restNames } from "../fields/blocks/mash";
import type { BlockKey } from "../fields/blocks";
import type { UnitWords } from "../unit-words";
import { rule, silent, type CheckLine } from "./rule";
import { grainUnknown } from "./steeping";
import { unusable } from "./words";

/** Below and above these the enzymes of the mash hardly work, or not for long (textbook knowledge; the limits from memory). */
const mashLimits: Readonly<Record<UnitSystem, readonly [lowest: number, highest: number]>> = { us: [140, 162], metric: [60, 72] };

/** Any of these rests is warm enough, and not too warm. */
const anyOf = (rests: readonly string[], lowest: number, highest: number): string =>
  `OR(${rests.map((rest) => `AND(N(${rest})>=${lowest},N(${rest})<=${highest})`).join(",")})`;

export function mashLine(units: UnitSystem, words: UnitWords, blocks: readonly BlockKey[]): CheckLine {
  const [lowest, highest] = mashLimits[units];
  return {
    id: "mash",
    label: "Mash",
    weight: "look",
    steps: [
      ...unusable("soak_temperature", "Mash at", "allowed"),
      ...unusable("soak_minutes", "Mash for"),
      ...unusable("mash_thickness", "Water to grain in the mash"),
      ...unusable("grain_temperature", "Grain stands at", "allowed"),
      grainUnknown,
      silent("no-grain", "grain_mass=0"),
      rule(
        "temperature",
        blocks.includes("mashRunOff")
          ? `AND(N(soak_temperature)>0,NOT(${anyOf(["soak_temperature", ...restNames.map((name) => `${name}_rest`)], lowest, highest)}))`
          : `AND(N(soak_temperature)>0,OR(soak_temperature<${lowest},soak_temperature>${highest}))`,
        `"A mash at "&TEXT(soak_temperature,"0")&" ${words.temperature} hardly turns starch into sugar."`,
      ),
      rule(
        "strike-unknown",
        "OR(ISERROR(mash_water),ISERROR(strike_temperature))",
        "The water to strike with cannot be calculated:",
        "look at the grain's mass, its temperature and the water to grain.",
      ),
      rule(
        "too-thin",
        'AND(water_collect<>"",N(mash_water)>N(water_collect))',
        "The mash alone takes more water than the batch needs:",
        "make it thicker.",
      ),
    ],
  };
}
