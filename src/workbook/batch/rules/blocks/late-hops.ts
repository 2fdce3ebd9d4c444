import type { UnitWords } from "../../unit-words";
import { rule, type CheckLine } from "../rule";
import { unusable } from "../words";
import type { Chosen } from "./chosen";

/** Beyond so much, g/L, more dry hops bring little more scent (S. R. Lafontaine and T. H. Shellhammer, J. Inst. Brew. 124, 2018, 434; from memory). */
const plentyGPerL = 8;

export const lateHopsLine = ({ units }: Chosen, _words: UnitWords): CheckLine => {
  // 1 oz/US gal is 7.489 g/L.
  const [plenty, unit] = units === "us" ? [(plentyGPerL / 7.489).toFixed(2), "oz/US gal"] : [String(plentyGPerL), "g/L"];
  return {
    id: "late-hops",
    label: "Checks",
    weight: "look",
    steps: [
      ...unusable("dry_after", "Dry hops go in"),
      ...unusable("dry_for", "Days that dry hops stay"),
      rule(
        "model-differs",
        'IF(AND(bitterness_model<>"tinseth",bitterness_model<>"rager",bitterness_model<>"kinetic"),TRUE,FALSE)',
        "The bitterness model must be tinseth, rager or kinetic:",
        "until then the bitterness shows an error.",
      ),
      rule(
        "dry-unknown",
        "ISERROR(INDEX(dry_effect,1,1))",
        "What so many dry hops do, nobody has measured:",
        "look at their mass and at the beer in the fermenter.",
      ),
      rule(
        "much-dry",
        `IF(ISNUMBER(dry_rate),dry_rate>${plenty},FALSE)`,
        `"Dry hops of "&FIXED(dry_rate,${units === "us" ? 2 : 1},TRUE)&" ${unit}: more than ${plenty} brings little more scent,"`,
        "but grassy tastes, and beer that stays behind in the hops.",
      ),
      rule(
        "dry-before-finished",
        'IF(AND(N(dry_hopped_on)=0,ISNUMBER(dry_in),verdict<>"steady"),COUNT(readings)>0,FALSE)',
        "The dry hops come while the beer may still be working:",
        "hops can wake it up, so note the day they go in (column L, section 7), and read again after it.",
      ),
    ],
  };
};
