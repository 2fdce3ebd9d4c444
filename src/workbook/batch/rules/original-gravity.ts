import { gravityLimits } from "../../../core/wort/gravity-limits";
import type { UnitSystem } from "../../../functions/quantities";
import type { Method } from "../contents";
import { gravityAllowance } from "../gravity-allowance";
import type { UnitWords } from "../unit-words";
import { rule, silent, type CheckLine, type Rule } from "./rule";
import { gravityText as gravity, isWords, shareOfOne, text, unusable, unusableIn } from "./words";

const reading = `"Reading "&${gravity("og_reached")}`;
const trust = `"Trust "&${gravity("og_expected")}&"; stir, sample again."`;

/** The figure that the sheet goes by where the reading is of no use. */
const untilThen = `IF(ISERROR(og_expected),"",IF(og_expected="",""," Until then trust "&${gravity("og_expected")}&"."))`;

/** Sample temperatures that a thermometer may show, in the sheet's unit. */
const sampleLimits: Readonly<Record<UnitSystem, readonly [number, number]>> = { us: [32, 212], metric: [0, 100] };

/** What is wrong with the malt table itself: then nothing can be held against it. */
const maltRules: readonly Rule[] = [
  ...unusableIn("mass", "malt_mass", "Mass of a malt"),
  ...unusableIn("yield", "INDEX(malt,0,2)", "Yield of a malt"),
  rule("yield-above-all", "MAX(INDEX(malt,0,2))>100", "A malt's yield is above 100 %: more than all of it cannot be."),
  rule(
    "yield-share-of-one",
    'COUNTIFS(INDEX(malt,0,2),">0",INDEX(malt,0,2),"<=1")>0',
    "A malt's yield is 1 % or less:",
    "type 74 for 74 %.",
  ),
  rule(
    "yield-as-points",
    'COUNTIFS(INDEX(malt,0,2),">=20",INDEX(malt,0,2),"<47")>0',
    "A malt's yield is 20 to 46 %: that looks like points for each pound and gallon.",
    "36 of them are 78 %: type 78.",
  ),
  ...unusable("grain_efficiency", "Mash efficiency"),
  shareOfOne("grain_efficiency", "Mash efficiency"),
  rule(
    "handling-unknown",
    'SUMPRODUCT((malt_handling<>"")*(malt_handling<>"mash")*(malt_handling<>"steep")*(malt_handling<>"extract")*(malt_handling<>"sugar"))>0',
    "The handling of a malt is none of mash, steep, extract and sugar.",
  ),
  rule(
    "malt-unfinished",
    'IF(ISERROR(og_plan),FALSE,AND(SUM(malt_mass)>0,N(gravity_volume)>0,N(grain_efficiency)>0,og_plan=""))',
    "A malt lacks its mass, yield or handling: until then there is no gravity to expect.",
  ),
];

/** A reading that cannot be read as what its scale says. */
function readingRules(units: UnitSystem, words: UnitWords): readonly Rule[] {
  const [coldest, hottest] = sampleLimits[units];
  const doubt = (...given: Parameters<typeof rule>): Rule => ({ ...rule(...given), after: untilThen });
  const isPlato = 'og_scale="P"';
  return [
    doubt("reading-error", "ISERROR(og_reading)", "The reading before the yeast shows an error:", "type the number."),
    doubt(
      "reading-text",
      isWords("og_reading"),
      `${text("The reading before the yeast: “")}&og_reading&${text("” is a text, not a number.")}`,
      "Type the number alone, with the decimal sign of your Excel.",
    ),
    doubt(
      "gravity-as-plato",
      `AND(${isPlato},N(og_reading)>=0.97,N(og_reading)<=${gravityLimits.atMost})`,
      `${gravity("og_reading")}&${text(" °P? That looks like specific gravity:")}`,
      "set the scale to SG.",
    ),
    doubt(
      "plato-as-gravity",
      `AND(NOT(${isPlato}),N(og_reading)>${gravityLimits.atMost},N(og_reading)<=40)`,
      `og_reading&${text(" looks like degrees Plato, but the scale says SG:")}`,
      "set the scale to P.",
    ),
    doubt(
      "points-as-gravity",
      `AND(NOT(${isPlato}),N(og_reading)>40,N(og_reading)<200)`,
      `"Write "&FIXED(1+og_reading/1000,3,TRUE)&" instead of "&og_reading&"."`,
    ),
    doubt(
      "no-decimal-sign",
      `AND(NOT(${isPlato}),N(og_reading)>=900,N(og_reading)<1200)`,
      `"Write "&FIXED(og_reading/1000,3,TRUE)&" instead of "&og_reading&"."`,
    ),
    ...(["og_temperature", "calibrated_at"] as const).flatMap((name) =>
      unusable(name, name === "og_temperature" ? "Sample temperature" : "Temperature of calibration", "allowed").map((one): Rule => ({
        ...one,
        after: untilThen,
      })),
    ),
    doubt(
      "sample-temperature",
      `AND(ISNUMBER(og_temperature),OR(N(og_temperature)<${coldest},N(og_temperature)>${hottest}))`,
      `"A sample at "&og_temperature&" ${words.temperature}? "&IF(AND(${units === "us" ? "og_temperature>0,og_temperature<32" : "og_temperature>100,og_temperature<=212"}),"That looks like ${units === "us" ? "°C" : "°F"}.","Look at the thermometer again.")`,
    ),
    doubt(
      "uncorrected",
      "ISERROR(og_reached)",
      "The reading cannot be corrected:",
      "look at the reading, its scale and both temperatures.",
    ),
    rule(
      "temperature-missing",
      'AND(og_reading<>"",og_reached="")',
      "The reading does not count yet: the sample's temperature is missing.",
    ),
  ];
}

const nothingExpected: readonly Rule[] = [
  rule("malt-error", "ISERROR(og_expected)", "What the malt gives cannot be calculated:", "correct first what the other checks name."),
  silent("unknown", 'OR(og_reached="",og_expected="")'),
];

/** Extract and volume fix the gravity, so a reading far from it is doubted, not the malt. */
const extractRules: readonly Rule[] = [
  ...nothingExpected,
  rule(
    "more-than-extract",
    `og_reached-og_expected>${gravityAllowance}`,
    `${reading}&" is more than the malt can give ("&${gravity("og_expected")}&"). "&IF(N(top_up)>0,"Usual cause: sampled before the top-up water was mixed in. ","Usual cause: extract or added water not stirred in, or less wort than written. ")`,
    trust,
  ),
  rule(
    "less-than-extract",
    `og_expected-og_reached>${gravityAllowance}`,
    `${reading}&" is less than the malt gives ("&${gravity("og_expected")}&"). "&IF(N(top_up)>0,"Usual cause: top-up water lying on top, not mixed in. ","Usual cause: extract left in the tin or on the bottom, or more wort than written. ")`,
    trust,
  ),
];

/** A mash may give less or more; what it cannot give is more than all of the grain's sugar, or less than the extract beside it. */
const mashRules: readonly Rule[] = [
  ...nothingExpected,
  rule(
    "beyond-the-grain",
    "ISERROR(efficiency_reached)",
    `${reading}&" is "&IF(og_reached>og_expected,"more than all the sugar of this malt can give","less than the extract and sugar alone give")&". Usual cause: not stirred, or "&IF(N(top_up)>0,IF(og_reached>og_expected,"sampled before the top-up water was mixed in. ","top-up water lying on top. "),"a wrong volume. ")`,
    trust,
  ),
  silent("efficiency-unknown", 'efficiency_reached=""'),
  rule(
    "far-from-efficiency",
    "ABS(efficiency_reached-grain_efficiency)>10",
    '"The grain gave "&TEXT(efficiency_reached,"0")&" % of its yield, planned were "&TEXT(grain_efficiency,"0")&" %. The sheet goes by the reading:"',
    "check crush, volume and reading, and plan with it next time.",
  ),
];

export const originalGravityLine = (units: UnitSystem, words: UnitWords, method: Method): CheckLine => ({
  id: "original-gravity",
  label: "Gravity against the malt",
  weight: "look",
  lines: 3,
  steps: [
    ...maltRules,
    ...readingRules(units, words),
    // Without grain a mash sheet's bill is extract and sugar, which fix the gravity as on an extract sheet.
    ...(method === "extract" ? extractRules : [{ when: "grain_mass=0", then: extractRules, otherwise: mashRules }]),
  ],
});
