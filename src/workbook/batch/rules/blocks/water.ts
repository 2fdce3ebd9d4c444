import { isAcid, usualAcidPercent } from "../../sheet/acids";
import type { UnitWords } from "../../unit-words";
import { rule, type CheckLine, type Rule } from "../rule";
import { unusable, unusableIn } from "../words";
import type { Chosen } from "./chosen";
import { noMaltMashed } from "./mash";

/** Beyond these a brewer tastes it, mg/L (common practice; from memory): magnesium bitter and laxative, sodium and chloride salty, sulfate harsh. */
const most: readonly (readonly [ion: string, row: number, mgPerL: number])[] = [
  ["magnesium", 2, 40],
  ["sodium", 3, 150],
  ["chloride", 4, 250],
  ["sulfate", 5, 400],
];
/** Least calcium that a mash likes, mg/L (common practice; from memory). */
const leastCalcium = 40;
/** g of salts in a litre that no usual water needs (our judgement). */
const mostSaltGPerL = 2;

/** Where a measured pH is worth a second look, and how far a good one may be from the expected (the calculation is good to about 0.1; our judgement). */
const [lowestPh, highestPh, scatter] = [5.1, 5.8, 0.25] as const;

const mashRules: readonly Rule[] = [
  ...unusable("mash_acid_amount", "Acid or base into the mash"),
  ...unusable("mash_measured", "Measured pH"),
  rule(
    "no-malt",
    `AND(${noMaltMashed},OR(N(mash_acid_amount)>0,AND(salts_into="the mash water",SUM(INDEX(salt_bill,0,2))>0)))`,
    "Salts or acid are for the mash, but no malt is mashed:",
    "type the malt with its mass in section 3 (mash), or salt all the water.",
  ),
  rule(
    "ph-unknown",
    "OR(ISERROR(mash_ph),ISERROR(mash_correction))",
    "The pH of the mash cannot be calculated:",
    "look at the malts with their colours, the water and the acid; the cell tells which.",
  ),
  rule(
    "measured-off",
    `IF(AND(N(mash_measured)>0,ISNUMBER(mash_ph)),ABS(mash_measured-mash_ph)>${scatter},FALSE)`,
    '"Measured pH "&FIXED(mash_measured,2,TRUE)&", expected "&FIXED(mash_ph,2,TRUE)&":"',
    "calibrate the meter, cool the sample, stir the mash; acidulated malt must be entered as acid.",
  ),
  rule(
    "ph",
    `IF(N(mash_measured)>0,OR(mash_measured<${lowestPh},mash_measured>${highestPh}),IF(ISNUMBER(mash_ph),OR(mash_ph<${lowestPh},mash_ph>${highestPh}),FALSE))`,
    '"A mash at pH "&FIXED(IF(N(mash_measured)>0,mash_measured,mash_ph),2,TRUE)&" works badly:"',
    "5.2 to 5.6 is good. Add half of what is missing, stir, measure. Acid burns: goggles, gloves; acid into water.",
  ),
  rule(
    "strength-taken",
    `IF(N(mash_acid_strength)>0,FALSE,AND(N(mash_acid_amount)>0,${isAcid("mash_corrector")}))`,
    `"Strength on its label is empty: "&${usualAcidPercent("mash_corrector")}&" % is taken for "&mash_corrector&" acid."`,
    "Read the label and type it: another strength is another pH.",
  ),
];

export const waterTreatmentLine = ({ method, units }: Chosen, { volume }: UnitWords): CheckLine => ({
  id: "water-treatment",
  label: "Checks",
  weight: "look",
  steps: [
    ...unusableIn("source", "source_water", "Your water"),
    ...unusableIn("target", "target_water", "Target"),
    ...unusableIn("salts", "INDEX(salt_bill,0,2)", "Salts"),
    ...unusable("demineralised", "Demineralised water in it"),
    rule(
      "salts-without-water",
      "AND(COUNT(source_water)=0,SUM(INDEX(salt_bill,0,2))>0)",
      "What the salts make of it cannot be told:",
      "type what your water holds, from its report; 0 for distilled water.",
    ),
    rule(
      "cannot",
      "ISERROR(INDEX(treated_ions,1,1))",
      "The water cannot be calculated:",
      "chalk hardly dissolves; look at the salts, and at the cell in column Q.",
    ),
    rule(
      "report",
      'IF(ISERROR(report_verdict),FALSE,report_verdict="cannot be right")',
      "This report cannot be right: its ions do not balance.",
      "Look at the units (mg/L of the ion itself), and at bicarbonate against alkalinity.",
    ),
    rule(
      "much-salt",
      `IF(N(treated_volume)=0,FALSE,SUM(INDEX(salt_bill,0,2))/(treated_volume${units === "us" ? "*3.7854" : ""})>${mostSaltGPerL})`,
      `"That is "&FIXED(SUM(INDEX(salt_bill,0,2)),0,TRUE)&" g of salts in "&FIXED(treated_volume,2,TRUE)&" ${volume}, more than beer bears:"`,
      "weigh in grams, on a scale that shows tenths.",
    ),
    ...most.map(([ion, row, mgPerL]) =>
      rule(
        `much-${ion}`,
        `IF(COUNT(treated_ions)=0,FALSE,INDEX(treated_ions,${row},2)>${mgPerL})`,
        `"${ion.charAt(0).toUpperCase()}${ion.slice(1)} of "&FIXED(INDEX(treated_ions,${row},2),0,TRUE)&" mg/L can be tasted; ${mgPerL} is plenty:"`,
        "less of its salts, or more demineralised water.",
      ),
    ),
    ...(method === "extract"
      ? [
          rule(
            "extract",
            "SUM(INDEX(salt_bill,0,2))>0",
            "The maker of the extract has salted it already:",
            "add salts by taste at most, a little at a time.",
          ),
        ]
      : [
          rule(
            "little-calcium",
            `IF(COUNT(treated_ions)=0,FALSE,INDEX(treated_ions,1,2)<${leastCalcium})`,
            `"Calcium of "&FIXED(INDEX(treated_ions,1,2),0,TRUE)&" mg/L is less than a mash likes (${leastCalcium} and more):"`,
            "gypsum or calcium chloride brings it.",
          ),
          ...mashRules,
        ]),
  ],
});
