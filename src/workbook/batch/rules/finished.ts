import { leaveThem } from "../../../functions/pack/check-words";
import { rule, type CheckLine } from "./rule";
import { isWords, text } from "./words";

/** Beer in glass or in a keg before its readings agreed may go on fermenting there. */
export const finishedLine: CheckLine = {
  id: "finished",
  label: "Packaged too early?",
  weight: "stop",
  steps: [
    rule("packaged-error", "ISERROR(packaged_on)", "Packaged on shows an error:", "type the date."),
    rule("packaged-text", isWords("packaged_on"), "Packaged on is a text, not a date.", "Type it such as 2026-09-19."),
    rule(
      "cannot-be-judged",
      "ISERROR(verdict)",
      `IF(N(packaged_on)>0,"Packaged, but no reading can be judged: correct them. Bottles: ${leaveThem}","Cannot be checked: correct the readings first.")`,
    ),
    rule("dry-hopped-error", "ISERROR(dry_hopped_on)", "Dry hops went in on shows an error:", "type the date."),
    rule(
      "dry-hopped-text",
      isWords("dry_hopped_on"),
      "Dry hops went in on is a text, not a date, so readings from before them still count.",
      "Type it such as 2026-09-12.",
    ),
    rule(
      "stalled",
      'verdict="stalled"',
      '"Stopped well above "&IF(N(fg_expected)>0,"the expected "&FIXED(fg_expected,3,TRUE),"where beer ends")&"."',
      text("Do not bottle: what is left may ferment in the glass."),
    ),
    rule(
      "before-brewed",
      "IF(AND(ISNUMBER(packaged_on),ISNUMBER(brewed_on)),AND(packaged_on>0,packaged_on<INT(brewed_on)),FALSE)",
      "Packaged before it was brewed: is a date mistyped?",
    ),
    rule(
      "too-early-after-hops",
      'AND(N(packaged_on)>0,verdict<>"steady",N(count_from)>0,into<>"keg")',
      "Packaged before readings agreed after the dry hops.",
      `The bottles: ${leaveThem}`,
    ),
    rule(
      "kegged-too-early",
      'AND(N(packaged_on)>0,verdict<>"steady",into="keg")',
      "Kegged before two readings a day apart agreed.",
      "Keep it cold, watch the pressure, and let some off.",
    ),
    rule(
      "too-early",
      'AND(N(packaged_on)>0,verdict<>"steady")',
      "Packaged before two readings a day apart agreed.",
      `The bottles: ${leaveThem}`,
    ),
  ],
};
