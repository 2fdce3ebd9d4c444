import type { UnitSystem } from "../../../functions/quantities";
import type { UnitWords } from "../unit-words";
import { anyError, firstOf, isWords, text, unusable } from "./words";

/** Lines of the day: steps, hops, the clock's own three, one more with a stand, one less without a boil. */
const dayLinesWanted =
  '(SUMPRODUCT(--(INDEX(steps,0,1)<>""))+SUMPRODUCT(--((INDEX(hop_plan,0,1)<>"")+(INDEX(hop_plan,0,2)<>"")>0))+IF(N(boil_minutes)=0,2,3)+IF(N(stand_minutes)+COUNTIF(hop_minutes,"stand")>0,1,0))';

/** More than labels of sanitisers ask for (our judgement): somebody has typed the dose for the whole bucket, or in another unit. */
const mostDose: Readonly<Record<UnitSystem, number>> = { us: 2.5, metric: 20 };

/** @param timeline first cell of the timeline's workings */
export function clockMessage(units: UnitSystem, words: UnitWords, timeline: string): string {
  return firstOf([
    ["ISERROR(brewed_on)", text("Brewed on shows an error: type the date.")],
    [isWords("brewed_on"), text("Brewed on is a text, not a date. Type it such as 2026-09-05.")],
    [isWords("start_time"), text("Day begins at is a text, not a time. Type it such as 9:00.")],
    ["ISERROR(boils_at)", text("The clock cannot be made: look at the altitude.")],
    ...unusable("tap_temperature", "Tap water", "allowed"),
    [
      "ISERROR(chill_minutes)",
      `"Chilling to "&pitch_temperature&" ${words.temperature} cannot be reckoned: is the tap water ("&tap_temperature&" ${words.temperature}) too warm for it? Look at the chiller (column L)."`,
    ],
    [
      "OR(ISERROR(warm_minutes),ISERROR(boil_up_minutes))",
      text("Heating cannot be reckoned: look at the burner and the temperatures beside section 2 (column L)."),
    ],
    ...unusable("sanitiser_volume", "Sanitiser bucket"),
    [
      isWords("sanitiser_per_volume"),
      `"Sanitiser dose: “"&sanitiser_per_volume&"” is a text. Type only the number of ${words.doseVolume} for one ${words.volume} (column L)."`,
    ],
    ...unusable("sanitiser_per_volume", "Sanitiser dose (column L)"),
    [
      `N(sanitiser_per_volume)>${mostDose[units]}`,
      `"Sanitiser dose: "&sanitiser_per_volume&" ${words.doseVolume} for one ${words.volume}? Labels ask for less: is that for the whole bucket? (column L)"`,
    ],
    [
      "ISERROR(sanitiser_dose)",
      text("The sanitiser cannot be reckoned: look at its bucket and at the label's dose (column L, beside the malt)."),
    ],
    [
      "MAX(hop_minutes)>N(boil_minutes)",
      text("A hop is to boil longer than the boil lasts. The clock puts it in when the boil begins, without a boil at flame-out."),
    ],
    ["ISERROR(stand_after)", text("The stand cannot be reckoned: look at its temperature and at the chiller (column L).")],
    [
      `ISERROR(${timeline})`,
      text(`The clock cannot be made: click on ${timeline} and read why. Its answer needs the cells below and beside it empty.`),
    ],
    [
      `AND(N(brewed_on)>0,${timeline}="")`,
      text("The clock waits: a step has no part of the day. Choose before, boil or after beside it (column L)."),
    ],
    [
      `AND(N(brewed_on)>0,${dayLinesWanted}>ROWS(timeline))`,
      `"The day has "&${dayLinesWanted}&" lines, but only "&ROWS(timeline)&" are printed: the last ones stand from column Q on."`,
    ],
  ]);
}

/** Figures of the card, and where each is to be mended. */
const cardFigures: readonly (readonly [name: string, words: string])[] = [
  ["og_plan", "planned gravity (malt, volume)"],
  ["og_shown", "original gravity (reading)"],
  ["fg_plan", "final gravity planned (yeast)"],
  ["fg_reached", "final gravity (readings)"],
  ["abv_reached", "alcohol (readings)"],
  ["ibu_plan", "bitterness (hops, boil, altitude)"],
  ["colour_plan", "colour (malt)"],
  ["colour_reached", "colour reached (volume in the fermenter)"],
  ["bottles_plan", "bottles (volume, bottle, loss)"],
  ["cost_plan", "cost (the tables' costs)"],
];

/** Bottles that hold less or more are of the other unit (fl oz or mL), or no beer bottles (our judgement). */
const bottleSizes: Readonly<Record<UnitSystem, readonly [smallest: number, largest: number]>> = { us: [3, 186], metric: [90, 5500] };

export function figuresMessage(units: UnitSystem, words: UnitWords): string {
  const [smallest, largest] = bottleSizes[units];
  const [own, other] = units === "us" ? ["fl oz", "mL"] : ["mL", "fl oz"];
  const failing = cardFigures.map(([name, sentence]) => `IF(ISERROR(${name}),"${sentence}; ","")`).join("&");
  return firstOf([
    [`units<>"${units}"`, text(`The units cell must say ${units}: in these units the sheet was made.`)],
    ...unusable("altitude", "Altitude", "allowed"),
    ["ISERROR(boils_at)", `"At "&altitude&" ${words.altitude} nobody brews: look at the altitude, bitterness goes by it."`],
    ...unusable("bottle_volume", "One bottle holds"),
    [
      `AND(N(bottle_volume)>0,OR(bottle_volume<${smallest},bottle_volume>${largest}))`,
      `"A bottle of "&bottle_volume&" ${own}? That looks like ${other}; this sheet is in ${own}."`,
    ],
    ...unusable("bottles_filled", "Bottles filled"),
    [
      "IF(ISNUMBER(bottles_ready),N(bottles_filled)>1.1*bottles_ready+1,FALSE)",
      '"More bottles filled ("&bottles_filled&") than the beer was enough for ("&bottles_ready&"): look at number, bottle and volume."',
    ],
    [anyError("figures"), `"The card shows an error in: "&${failing}&"click on the cell and read why."`],
  ]);
}
