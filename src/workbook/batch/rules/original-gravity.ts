import type { UnitSystem } from "../../../functions/quantities";
import type { Method } from "../contents";
import { gravityAllowance } from "../gravity-allowance";
import type { UnitWords } from "../unit-words";
import { firstOf, isWords, gravityText, shareOfOne, text, unusable, unusableIn, type Case } from "./words";

const gravity = gravityText;
const reading = `"Reading "&${gravity("og_reached")}`;
const trust = `"Trust "&${gravity("og_expected")}&"; stir, sample again."`;

/** The figure that the sheet goes by where the reading is of no use. */
const untilThen = `IF(ISERROR(og_expected),"",IF(og_expected="",""," Until then trust "&${gravity("og_expected")}&"."))`;

/** Sample temperatures that a thermometer may show, in the sheet's unit. */
const sampleLimits: Readonly<Record<UnitSystem, readonly [number, number]>> = { us: [32, 212], metric: [0, 100] };

/** What is wrong with the malt table itself: then nothing can be held against it. */
const maltCases: readonly Case[] = [
  ...unusableIn("malt_mass", "Mass of a malt"),
  ...unusableIn("INDEX(malt,0,2)", "Yield of a malt"),
  ["MAX(INDEX(malt,0,2))>100", text("A malt's yield is above 100 %: more than all of it cannot be.")],
  ['COUNTIFS(INDEX(malt,0,2),">0",INDEX(malt,0,2),"<=1")>0', text("A malt's yield is 1 % or less: type 74 for 74 %.")],
  [
    'COUNTIFS(INDEX(malt,0,2),">=20",INDEX(malt,0,2),"<47")>0',
    text("A malt's yield is 20 to 46 %: that looks like points for each pound and gallon. 36 of them are 78 %: type 78."),
  ],
  ...unusable("grain_efficiency", "Sugar won from the grain"),
  shareOfOne("grain_efficiency", "Sugar won from the grain"),
  [
    'SUMPRODUCT((malt_handling<>"")*(malt_handling<>"mash")*(malt_handling<>"steep")*(malt_handling<>"extract")*(malt_handling<>"sugar"))>0',
    text("The handling of a malt is none of mash, steep, extract and sugar."),
  ],
  [
    'IF(ISERROR(og_plan),FALSE,AND(SUM(malt_mass)>0,N(gravity_volume)>0,N(grain_efficiency)>0,og_plan=""))',
    text("A malt lacks its mass, yield or handling: until then there is no gravity to expect."),
  ],
];

/** A reading that cannot be read as what its scale says. */
function readingCases(units: UnitSystem, words: UnitWords): readonly Case[] {
  const [coldest, hottest] = sampleLimits[units];
  const doubt = (holds: string, sentence: string): Case => [holds, `${sentence}&${untilThen}`];
  const isPlato = 'og_scale="P"';
  return [
    doubt("ISERROR(og_reading)", text("The reading before the yeast shows an error: type the number.")),
    doubt(
      isWords("og_reading"),
      `${text("The reading before the yeast: “")}&og_reading&${text("” is a text, not a number. Type the number alone, with the decimal sign of your Excel.")}`,
    ),
    doubt(
      `AND(${isPlato},N(og_reading)>=0.97,N(og_reading)<=1.2)`,
      `${gravity("og_reading")}&${text(" °P? That looks like specific gravity: set the scale to SG.")}`,
    ),
    doubt(
      `AND(NOT(${isPlato}),N(og_reading)>1.2,N(og_reading)<=40)`,
      `og_reading&${text(" looks like degrees Plato, but the scale says SG: set the scale to P.")}`,
    ),
    doubt(
      `AND(NOT(${isPlato}),N(og_reading)>40,N(og_reading)<200)`,
      `"Write "&FIXED(1+og_reading/1000,3,TRUE)&" instead of "&og_reading&"."`,
    ),
    doubt(
      `AND(NOT(${isPlato}),N(og_reading)>=900,N(og_reading)<1200)`,
      `"Write "&FIXED(og_reading/1000,3,TRUE)&" instead of "&og_reading&"."`,
    ),
    ...(["og_temperature", "calibrated_at"] as const).flatMap((name) =>
      unusable(name, name === "og_temperature" ? "Sample temperature" : "Temperature of calibration", "allowed").map(([holds, sentence]) =>
        doubt(holds, sentence),
      ),
    ),
    doubt(
      `AND(ISNUMBER(og_temperature),OR(N(og_temperature)<${coldest},N(og_temperature)>${hottest}))`,
      `"A sample at "&og_temperature&" ${words.temperature}? "&IF(AND(${units === "us" ? "og_temperature>0,og_temperature<32" : "og_temperature>100,og_temperature<=212"}),"That looks like ${units === "us" ? "°C" : "°F"}.","Look at the thermometer again.")`,
    ),
    doubt("ISERROR(og_reached)", text("The reading cannot be corrected: look at the reading, its scale and both temperatures.")),
    ['AND(og_reading<>"",og_reached="")', text("The reading does not count yet: the sample's temperature is missing.")],
  ];
}

const nothingExpected: readonly Case[] = [
  ["ISERROR(og_expected)", text("What the malt gives cannot be reckoned: mend first what the other checks name.")],
  ['OR(og_reached="",og_expected="")', '""'],
];

/** Extract and volume fix the gravity, so a reading far from it is doubted, not the malt. */
const extractCases: readonly Case[] = [
  ...nothingExpected,
  [
    `og_reached-og_expected>${gravityAllowance}`,
    `${reading}&" is more than the malt can give ("&${gravity("og_expected")}&"). "&IF(N(top_up)>0,"Usual cause: sampled before the top-up water was mixed in. ","Usual cause: extract or added water not stirred in, or less wort than written. ")&${trust}`,
  ],
  [
    `og_expected-og_reached>${gravityAllowance}`,
    `${reading}&" is less than the malt gives ("&${gravity("og_expected")}&"). "&IF(N(top_up)>0,"Usual cause: top-up water lying on top, not mixed in. ","Usual cause: extract left in the tin or on the bottom, or more wort than written. ")&${trust}`,
  ],
];

/** A mash may give less or more; what it cannot give is more than all of the grain's sugar, or less than the extract beside it. */
const mashCases: readonly Case[] = [
  ...nothingExpected,
  [
    "ISERROR(efficiency_reached)",
    `${reading}&" is "&IF(og_reached>og_expected,"more than all the sugar of this malt can give","less than the extract and sugar alone give")&". Usual cause: not stirred, or "&IF(N(top_up)>0,IF(og_reached>og_expected,"sampled before the top-up water was mixed in. ","top-up water lying on top. "),"a wrong volume. ")&${trust}`,
  ],
  ['efficiency_reached=""', '""'],
  [
    "ABS(efficiency_reached-grain_efficiency)>10",
    '"The grain gave "&TEXT(efficiency_reached,"0")&" % of its yield, planned were "&TEXT(grain_efficiency,"0")&" %. The sheet goes by the reading: check crush, volume and reading, and plan with it next time."',
  ],
];

export function originalGravityMessage(units: UnitSystem, words: UnitWords, method: Method): string {
  const judged = method === "extract" ? firstOf(extractCases) : `IF(grain_mass=0,${firstOf(extractCases)},${firstOf(mashCases)})`;
  return firstOf([...maltCases, ...readingCases(units, words)], judged);
}
