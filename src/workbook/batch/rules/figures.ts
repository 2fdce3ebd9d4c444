import type { UnitSystem } from "../../../functions/quantities";
import type { Method } from "../contents";
import type { UnitWords } from "../unit-words";
import { rule, type CheckLine } from "./rule";
import { anyError, text, unusable } from "./words";

/** Figures of the card, and where each is to be corrected. */
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

/** Figures of the mash, which the card does not hold. */
const mashFigures: readonly (readonly [name: string, words: string])[] = [
  ["mash_water", "water for the mash (grain, water to grain)"],
  ["strike_temperature", "what to heat it to (grain, its temperature, mash)"],
  ["sparge_water", "water to sparge with"],
];

/** Bottles that hold less or more are of the other unit (fl oz or mL), or no beer bottles (our judgement). */
const bottleSizes: Readonly<Record<UnitSystem, readonly [smallest: number, largest: number]>> = { us: [3, 186], metric: [90, 5500] };

export function figuresLine(units: UnitSystem, words: UnitWords, method: Method): CheckLine {
  const [smallest, largest] = bottleSizes[units];
  const [own, other] = units === "us" ? ["fl oz", "mL"] : ["mL", "fl oz"];
  const failing = (figures: typeof cardFigures): string =>
    figures.map(([name, sentence]) => `IF(ISERROR(${name}),"${sentence}; ","")`).join("&");
  return {
    id: "figures",
    label: "Figures",
    weight: "look",
    lines: 3,
    steps: [
      rule("other-units", `units<>"${units}"`, `The units cell must say ${units}: in these units the sheet was made.`),
      ...unusable("altitude", "Altitude", "allowed"),
      rule(
        "too-high",
        "ISERROR(boils_at)",
        `"At "&altitude&" ${words.altitude} nobody brews:"`,
        text("look at the altitude, bitterness goes by it."),
      ),
      ...unusable("bottle_volume", "One bottle holds"),
      rule(
        "bottle-of-other-unit",
        `AND(N(bottle_volume)>0,OR(bottle_volume<${smallest},bottle_volume>${largest}))`,
        `"A bottle of "&bottle_volume&" ${own}? That looks like ${other}; this sheet is in ${own}."`,
      ),
      ...unusable("bottles_filled", "Bottles filled"),
      rule(
        "more-bottles-than-beer",
        "IF(ISNUMBER(bottles_ready),N(bottles_filled)>1.1*bottles_ready+1,FALSE)",
        '"More bottles filled ("&bottles_filled&") than the beer was enough for ("&bottles_ready&"):"',
        "look at number, bottle and volume.",
      ),
      rule(
        "card-error",
        anyError("figures"),
        `"The card shows an error in: "&${failing(cardFigures)}`,
        '"click on the cell and read why."',
      ),
      ...(method === "extract"
        ? []
        : [
            rule(
              "mash-error",
              `OR(${mashFigures.map(([name]) => `ISERROR(${name})`).join(",")})`,
              `"Section 3 shows an error in: "&${failing(mashFigures)}`,
              '"click on the cell and read why."',
            ),
          ]),
    ],
  };
}
