import type { UnitSystem } from "../../../functions/quantities";
import type { BlockKey } from "../fields/blocks";
import { furtherLines } from "../sheet/clock-lines";
import type { UnitWords } from "../unit-words";
import { rule, type CheckLine } from "./rule";
import { isWords, text, unusable } from "./words";

/** Lines of the day: steps, hops, the clock's own three, one more with a stand, one less without a boil. */
const dayLinesWanted =
  '(SUMPRODUCT(--(INDEX(steps,0,1)<>""))+SUMPRODUCT(--((INDEX(hop_plan,0,1)<>"")+(INDEX(hop_plan,0,2)<>"")>0))+IF(N(boil_minutes)=0,2,3)+IF(N(stand_minutes)+COUNTIF(hop_minutes,"stand")>0,1,0))';

/** A few more than the clock's rows, where hops go in late. */
const dayLinesPrinted = (blocks: readonly BlockKey[]): string => `ROWS(timeline)${blocks.includes("lateHops") ? `+${furtherLines}` : ""}`;

/** More than labels of sanitisers ask for (our judgement): somebody has typed the dose for the whole bucket, or in another unit. */
const mostDose: Readonly<Record<UnitSystem, number>> = { us: 2.5, metric: 20 };

/** @param timeline first cell of the timeline's workings */
export const clockLine = (units: UnitSystem, words: UnitWords, timeline: string, blocks: readonly BlockKey[]): CheckLine => ({
  id: "clock",
  label: "Clock of the brew day",
  weight: "look",
  steps: [
    rule("brewed-error", "ISERROR(brewed_on)", "Brewed on shows an error:", "type the date."),
    rule("brewed-text", isWords("brewed_on"), "Brewed on is a text, not a date.", "Type it such as 2026-09-05."),
    rule("start-text", isWords("start_time"), "Day begins at is a text, not a time.", "Type it such as 9:00."),
    rule("altitude", "ISERROR(boils_at)", "The clock cannot be made:", "look at the altitude."),
    ...unusable("tap_temperature", "Tap water", "allowed"),
    rule(
      "chilling-unknown",
      "ISERROR(chill_minutes)",
      `"Chilling to "&pitch_temperature&" ${words.temperature} cannot be calculated: is the tap water ("&tap_temperature&" ${words.temperature}) too warm for it?"`,
      text("Look at the chiller (column L)."),
    ),
    rule(
      "heating-unknown",
      "OR(ISERROR(warm_minutes),ISERROR(boil_up_minutes))",
      "Heating cannot be calculated:",
      "look at the burner and the temperatures beside section 2 (column L).",
    ),
    ...unusable("sanitiser_volume", "Sanitiser bucket"),
    rule(
      "dose-text",
      isWords("sanitiser_per_volume"),
      '"Sanitiser dose: “"&sanitiser_per_volume&"” is a text."',
      text(`Type only the number of ${words.doseVolume} for one ${words.volume} (column L).`),
    ),
    ...unusable("sanitiser_per_volume", "Sanitiser dose (column L)"),
    rule(
      "dose-too-high",
      `N(sanitiser_per_volume)>${mostDose[units]}`,
      `"Sanitiser dose: "&sanitiser_per_volume&" ${words.doseVolume} for one ${words.volume}? Labels ask for less: is that for the whole bucket? (column L)"`,
    ),
    rule(
      "dose-unknown",
      "ISERROR(sanitiser_dose)",
      "The sanitiser cannot be calculated:",
      "look at its bucket and at the label's dose (column L, beside the malt).",
    ),
    rule(
      "hop-longer-than-boil",
      "MAX(hop_minutes)>N(boil_minutes)",
      "A hop is to boil longer than the boil lasts. The clock puts it in when the boil begins, without a boil at flame-out.",
    ),
    rule(
      "stand-unknown",
      "ISERROR(stand_after)",
      "The stand cannot be calculated:",
      "look at its temperature and at the chiller (column L).",
    ),
    rule(
      "timeline-error",
      `ISERROR(${timeline})`,
      "The clock cannot be made:",
      `click on ${timeline} and read why. Its answer needs the cells below and beside it empty.`,
    ),
    rule(
      "step-without-part",
      `AND(N(brewed_on)>0,${timeline}="")`,
      "The clock waits: a step has no part of the day.",
      "Choose before, boil or after beside it (column L).",
    ),
    rule(
      "more-lines-than-room",
      `AND(N(brewed_on)>0,${dayLinesWanted}>${dayLinesPrinted(blocks)})`,
      `"The day has "&${dayLinesWanted}&" lines, but only "&(${dayLinesPrinted(blocks)})&" are printed: the last ones stand from column Q on."`,
    ),
  ],
});
