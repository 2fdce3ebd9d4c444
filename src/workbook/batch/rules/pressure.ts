import { headspaceLimits } from "../../../core/pack/closed-bottle";
import { refusal } from "../../../functions/pack/check-words";
import type { UnitSystem } from "../../../functions/quantities";
import type { BlockKey } from "../fields/blocks";
import { inParts } from "../sheet/parts";
import { pressureOfParts } from "./blocks/parts";
import { rule, sugarGoesBy, type CheckLine, type Rule } from "./rule";
import { text, unusable } from "./words";

/** So much warmer or colder than the beer was, by the readings and by what its yeast is kept to, is a slip or the other scale (our judgement). */
const warmthSlack: Readonly<Record<UnitSystem, number>> = { us: 5, metric: 3 };
const degrees = { us: "°F", metric: "°C" } as const;

const isBottled = 'into="bottles"';

/** Only a number: of a text the verdict itself shows an error. */
const outsideAir = `IF(ISNUMBER(headspace),OR(headspace<${headspaceLimits.atLeast},headspace>${headspaceLimits.atMost}),FALSE)`;

/** Warmer since it finished than it ever was would get it too much sugar, colder too little. */
function warmth(units: UnitSystem): Rule[] {
  const said = (than: string, seen: string): string =>
    `"${sugarGoesBy}"&warmest_beer&" ${degrees[units]} as the warmest since it finished, ${than} "&TEXT(${seen},"0")&" by this sheet. Right, or a slip?"`;
  const [most, least] = ["MAX(beer_temperatures,ferment_to)", "MIN(beer_temperatures)"];
  return [
    rule(
      "warmer-than-it-was",
      `AND(${isBottled},COUNT(beer_temperatures,ferment_to)>0,warmest_beer>${most}+${warmthSlack[units]})`,
      said("but the beer came to no more than", most),
    ),
    rule(
      "colder-than-it-was",
      `AND(${isBottled},COUNT(beer_temperatures)>0,warmest_beer<${least}-${warmthSlack[units]})`,
      said("but the beer was never below", least),
    ),
  ];
}

const kegUnknown = [
  text("The pressure of the keg cannot be calculated:"),
  text("look at the temperature at which it stands. Set none by guess."),
] as const;

/** Sugar in bottles, or a pressure on a keg, is never calculated without a word about what they can take: the sheet's verdict. */
export const pressureLine = (units: UnitSystem, blocks: readonly BlockKey[]): CheckLine => ({
  id: "pressure",
  label: "Pressure in the bottle",
  weight: "stop",
  lines: 4,
  steps: [
    rule(
      "other-units",
      `units<>"${units}"`,
      `"The units cell says “"&units&"”, but this sheet was made in ${units}: every figure on it is misread, the pressure too."`,
      text(`Type ${units} again.`),
    ),
    ...(blocks.includes("partsOfWort") ? [{ when: inParts, then: pressureOfParts, otherwise: ofTheWhole(units) }] : ofTheWhole(units)),
  ],
});

/** Of beer that goes into one kind of vessel. */
const ofTheWhole = (units: UnitSystem): readonly Rule[] => [
  rule("into-error", "ISERROR(into)", "Into shows an error:", "choose bottles or keg."),
  rule(
    "into-unknown",
    `AND(NOT(${isBottled}),into<>"keg")`,
    "Choose bottles or keg: until then neither sugar nor pressure is calculated.",
    "Some of each: a sheet for each part.",
  ),
  ...unusable("carbonation", "Target carbonation"),
  rule("no-carbonation", "N(carbonation)=0", "Target carbonation: none yet, so neither sugar nor pressure is calculated."),
  rule(
    "holds-enough",
    `IF(AND(${isBottled},ISNUMBER(residual_gas)),residual_gas>=carbonation,FALSE)`,
    '"The beer already holds "&FIXED(residual_gas,2,TRUE)&" volumes of CO2: to get "&FIXED(carbonation,1,TRUE)&" no sugar is needed."',
  ),
  rule(
    "air-in-neck",
    `AND(${isBottled},${outsideAir})`,
    `"Air in the neck: ${headspaceLimits.atLeast} to ${headspaceLimits.atMost} %, not "&headspace&"."`,
    text("Until then neither sugar nor pressure is calculated."),
  ),
  rule(
    "cannot-be-judged",
    "ISERROR(pressure_verdict)",
    `IF(${isBottled},${text("Whether the bottle will hold the pressure cannot be judged: look at the warmest place, the kind of bottle, the air in the neck and the gravities. Do not bottle on it.")},${text("The pressure of the keg cannot be calculated: look at the temperature at which it stands. Set none by guess.")})`,
  ),
  rule("keg-unknown", `AND(NOT(${isBottled}),ISERROR(keg_pressure))`, ...kegUnknown),
  rule(
    "sugar-unknown",
    `AND(${isBottled},ISERROR(sugar_mass))`,
    "The sugar cannot be calculated:",
    "look at its kind, the warmest temperature since it finished, and the volume. Do not guess it.",
  ),
  rule(
    "warmest-missing",
    `AND(${isBottled},warmest_beer="")`,
    "Warmest since it finished is empty: until it is filled in, no sugar is calculated.",
  ),
  rule(
    "not-known-yet",
    'pressure_verdict=""',
    `IF(${isBottled},${text("Whether the bottle will hold the pressure is not known yet: fill in the kind of bottle and the warmest place they will stand.")},${text("Keg stands at: no temperature yet, so no pressure is calculated.")})`,
  ),
  rule("refused", `ISNUMBER(FIND("${refusal}",pressure_verdict))`, "pressure_verdict"),
  rule("loss-negative", `AND(${isBottled},N(bottling_loss)<0)`, "Lost in racking is less than nothing, so no sugar is calculated."),
  ...warmth(units),
  rule("close", 'LEFT(pressure_verdict,6)="close:"', "pressure_verdict"),
];
