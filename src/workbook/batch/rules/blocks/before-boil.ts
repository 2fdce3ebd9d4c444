import type { UnitWords } from "../../unit-words";
import { rule, type CheckLine } from "../rule";
import { gravityText, unusable } from "../words";
import type { Chosen } from "./chosen";

/** A stick, a mark and a thermometer are good to so much of the volume together (our judgement). */
const volumeAllowance = 0.1;
/** What a hydrometer and a volume leave open between them (our judgement): further off, it is the wort. */
const gravityAllowance = 0.004;

export const beforeBoilLine = ({ method }: Chosen, words: UnitWords): CheckLine => ({
  id: "before-boil",
  label: "Checks",
  weight: "look",
  steps: [
    ...unusable("before_volume", "In the kettle before the boil"),
    ...unusable("before_temperature", "Its temperature", "allowed"),
    ...unusable("before_reading", "Reading before the boil", "allowed"),
    ...unusable("before_sample", "Temperature of the sample", "allowed"),
    ...unusable("after_volume", "In the kettle after the boil"),
    ...unusable("after_temperature", "Its temperature after the boil", "allowed"),
    ...(method === "extract" ? [] : unusable("tun_left", "Left below the false bottom")),
    rule(
      "gravity-unknown",
      "ISERROR(before_gravity)",
      "The gravity before the boil cannot be calculated:",
      "look at the reading, its scale and the temperature of the sample.",
    ),
    rule(
      "more-after",
      'IF(AND(before_cold<>"",after_cold<>""),after_cold>before_cold,FALSE)',
      "There is more after the boil than before it:",
      "look at both volumes and their temperatures.",
    ),
    rule(
      "nothing-kept",
      'IF(mash_kept="",FALSE,mash_kept<0)',
      "More wort is in the kettle than water went in:",
      "was it read hot? Type its temperature, and the water really collected (column L, section 3).",
    ),
    ...(method === "extract"
      ? []
      : [
          rule(
            "more-left-than-missing",
            'IF(mash_kept="",FALSE,N(tun_left)>mash_kept)',
            "More was left in the tun than is missing in all:",
            "look at it, at the volume in the kettle and at the water collected.",
          ),
          rule(
            "more-than-all",
            "IF(ISNUMBER(before_efficiency),before_efficiency>100,ISERROR(before_efficiency))",
            "That is more sugar than the grain holds:",
            "look at volume and reading; stir well, let the sample cool.",
          ),
        ]),
    rule(
      "volume-off",
      `IF(OR(before_cold="",N(water_before_boil)=0),FALSE,ABS(before_cold-water_before_boil)>${volumeAllowance}*water_before_boil)`,
      `"Before the boil are "&FIXED(before_cold,2,TRUE)&", planned were "&FIXED(water_before_boil,2,TRUE)&" ${words.volume}:"`,
      "measured hot, or a slip? Else boil longer or shorter; “Too high, too low” tells how long.",
    ),
    ...(method === "extract"
      ? [
          rule(
            "gravity-off",
            `IF(OR(before_gravity="",before_cold="",N(before_planned)=0),FALSE,ABS(before_gravity-1-(before_planned-1)*water_before_boil/before_cold)>${gravityAllowance})`,
            `"Malt and volume give "&FIXED(1+(before_planned-1)*water_before_boil/before_cold,3,TRUE)&", the reading says "&${gravityText("before_gravity")}&":"`,
            "stir until all extract is gone, let the sample cool, and read again.",
          ),
        ]
      : [
          rule(
            "gravity-off",
            `IF(OR(og_forecast="",og_plan=""),FALSE,ABS(og_forecast-og_plan)>${gravityAllowance})`,
            `"It is heading for "&${gravityText("og_forecast")}&", planned was "&${gravityText("og_plan")}&":"`,
            "now it can still be corrected. “Too high, too low” in the pane tells with how much.",
          ),
        ]),
  ],
});
