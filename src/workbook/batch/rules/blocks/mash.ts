import { restNames } from "../../fields/blocks/mash";
import { furtherRests, mashVessel } from "../../sheet/mash-rests";
import { mashRoomFormula } from "../../sheet/room";
import type { UnitWords } from "../../unit-words";
import { rule, type CheckLine, type Rule } from "../rule";
import { gravityText, unusable } from "../words";
import type { Chosen } from "./chosen";

/** A stick, a mark and a thermometer are good to so much of the volume together (our judgement). */
const volumeAllowance = 0.15;
/** So much better than a mash can be is a slip (a reading good to 0.002 in a strong first running is worth 3 %; our judgement). */
const mostPercent = 104;
/** What a good mash dissolves, and what a poor one leaves, % (common practice). */
const poorConversion = 85;

/** Nothing of the bill is mashed: what is planned for a mash has nothing to work on. */
export const noMaltMashed = 'SUMIF(malt_handling,"mash",malt_mass)=0';

const restRules = (units: Chosen["units"], words: UnitWords): Rule[] =>
  furtherRests.flatMap((rest, index): Rule[] => {
    const { name, from, water } = rest;
    const [label, room] = [`${name.charAt(0).toUpperCase()}${name.slice(1)} rest`, mashRoomFormula(units, water)];
    const before = restNames[index - 1];
    return [
      ...unusable(`${name}_rest`, label),
      ...unusable(`${name}_minutes`, `${label}, minutes`),
      ...(before === undefined
        ? []
        : [
            rule(
              `${name}-out-of-turn`,
              `AND(N(${name}_rest)>0,N(${before}_rest)=0)`,
              `${label}: the one before it is empty.`,
              "Fill them in from above.",
            ),
          ]),
      rule(
        `${name}-not-warmer`,
        `AND(N(${name}_rest)>0,N(${name}_rest)<=N(${from}))`,
        `"The ${name} rest at "&FIXED(${name}_rest,0,TRUE)&" ${words.temperature} is no warmer than the one before:"`,
        "a mash is only ever warmed, since what the heat has stopped does not begin again.",
      ),
      rule(
        `${name}-too-full`,
        `IF(ISNUMBER(${name}_adds),IF(N(${mashVessel})>0,${room}>${mashVessel},FALSE),FALSE)`,
        `"Not poured: with "&FIXED(${name}_adds,2,TRUE)&" ${words.volume} more the mash takes "&FIXED(${room},2,TRUE)&", its vessel holds "&FIXED(${mashVessel},2,TRUE)&"."`,
        "Begin thicker, or lift it by decoction or heat.",
      ),
    ];
  });

export const mashRunOffLine = ({ units }: Chosen, words: UnitWords): CheckLine => ({
  id: "mash-run-off",
  label: "Checks",
  weight: "look",
  steps: [
    rule(
      "no-malt",
      `AND(${noMaltMashed},OR(${restNames.map((name) => `N(${name}_rest)>0`).join(",")}))`,
      "There are rests, but no malt to mash:",
      "type the malt with its mass in section 3 (mash), or empty the rests.",
    ),
    rule("altitude", "ISERROR(boils_at)", "What lifts the mash cannot be calculated:", "look at the altitude."),
    ...restRules(units, words),
    rule(
      "no-water-left",
      "IF(AND(ISNUMBER(mash_full),ISNUMBER(water_collect)),mash_full>water_collect+0.005,FALSE)",
      `"With all that lifts it the mash takes "&FIXED(mash_full,2,TRUE)&" ${words.volume}, more than is collected:"`,
      "begin thicker, or lift it by decoction or heat.",
    ),
    ...(["first", "later"] as const).flatMap((name) => [
      ...unusable(`${name}_running`, name === "first" ? "First running" : "What runs off after it"),
      ...unusable(`${name}_running_at`, "Temperature of a running", "allowed"),
      ...unusable(`${name}_reading`, "Reading of a running", "allowed"),
      ...unusable(`${name}_sample`, "Temperature of a sample", "allowed"),
    ]),
    rule(
      "planned-unknown",
      "ISERROR(INDEX(runnings_planned,1,1))",
      "What will run off cannot be calculated:",
      "look at the mash water, at what the grain keeps (column L), and at what dissolves in the mash.",
    ),
    rule(
      "reading-unknown",
      "OR(ISERROR(first_gravity),ISERROR(later_gravity))",
      "The gravity of a running cannot be calculated:",
      "look at the reading, its scale and the temperature of the sample.",
    ),
    rule(
      "more-than-water",
      "IF(ISNUMBER(runnings_kept),runnings_kept<0,FALSE)",
      "More has run off than grain and tun let go of:",
      "was it read hot? Type its temperature, and the water really collected (column L, section 3).",
    ),
    rule(
      "later-is-stronger",
      "IF(AND(ISNUMBER(first_gravity),ISNUMBER(later_gravity)),later_gravity>first_gravity,FALSE)",
      `"What ran off later is stronger ("&${gravityText("later_gravity")}&") than the first running ("&${gravityText("first_gravity")}&"):"`,
      "are they in each other's place?",
    ),
    rule(
      "more-than-all",
      `OR(IF(ISNUMBER(runnings_efficiency),runnings_efficiency>${mostPercent},FALSE),IF(ISNUMBER(conversion_seen),conversion_seen>${mostPercent},FALSE))`,
      "That is more sugar than the malt holds:",
      "look at volume and reading; stir well, let the sample cool.",
    ),
    rule(
      "volume-off",
      `IF(OR(first_cold="",COUNT(INDEX(runnings_planned,3,2))=0),FALSE,ABS(first_cold-INDEX(runnings_planned,3,2))>${volumeAllowance}*INDEX(runnings_planned,3,2))`,
      `"First running "&FIXED(first_cold,2,TRUE)&", planned "&FIXED(INDEX(runnings_planned,3,2),2,TRUE)&" ${words.volume}:"`,
      "a slow tap, read hot, or the grain keeps another amount than the kit says.",
    ),
    rule(
      "poor-mash",
      `IF(ISNUMBER(conversion_seen),conversion_seen<${poorConversion},FALSE)`,
      '"Only "&FIXED(conversion_seen,0,TRUE)&" % has dissolved:"',
      "a coarse crush, a cold or sour mash, or too little time. Stir; another half hour may help.",
    ),
  ],
});
