import type { Method } from "../contents";
import type { UnitWords } from "../unit-words";
import { rule, type CheckLine } from "./rule";
import { text, unusable } from "./words";

/** A volume of more than this is a slip, or a brewery (our judgement). */
const largestVolume = 10000;

/** @param budget first cell of the water budget's workings */
export const volumesLine = (words: UnitWords, method: Method, budget: string): CheckLine => ({
  id: "volumes",
  label: "Volumes",
  weight: "look",
  steps: [
    ...unusable("volume", "Into the fermenter"),
    rule("none", "N(volume)=0", "Into the fermenter: no volume yet."),
    rule(
      "too-large",
      `volume>${largestVolume}`,
      `${text("Into the fermenter: ")}&volume&${text(` ${words.volume} is more than this sheet can calculate with.`)}`,
      "Is a decimal sign missing?",
    ),
    ...unusable("top_up", "Top-up water"),
    rule("top-up-whole", "N(top_up)>=volume", "Top-up water is as much as the whole batch: nothing is left to boil."),
    ...unusable("boil_minutes", "Boil"),
    ...unusable("boil_off", "Boil-off rate"),
    ...unusable("kettle_loss", "Kettle loss (trub)"),
    ...unusable("absorption", "Water that the grain keeps"),
    ...unusable("tun_dead_space", "Dead space of the mash tun"),
    rule(
      "boils-dry",
      "N(boil_off)>N(kettle_part)",
      text("More than the whole kettle would boil away in an hour:"),
      "look at “Boil-off rate”.",
    ),
    rule(
      "malt-unknown",
      `AND(ISERROR(${budget}),ISERROR(og_plan))`,
      "The water cannot be calculated:",
      "look at the malt table; what dissolves needs no water.",
    ),
    rule(
      "budget-error",
      `ISERROR(${budget})`,
      "The water cannot be calculated:",
      `click on ${budget} and read why. Its answer needs the cells below and beside it empty.`,
    ),
    ...(method === "extract"
      ? []
      : [
          rule(
            "sparge-unknown",
            "ISERROR(sparge_water)",
            "The water to sparge with cannot be calculated:",
            "look at the grain and at the water to grain in the mash.",
          ),
        ]),
    ...unusable("volume_reached", "Volume in the fermenter"),
    rule(
      "far-from-plan",
      "AND(N(volume_reached)>0,ABS(N(volume_reached)-volume)>volume/4)",
      `"In the fermenter are "&volume_reached&", planned were "&volume&" ${words.volume}: measured, or a slip?"`,
      text("Gravity, sugar and bottles go by it."),
    ),
    ...unusable("bottling_loss", "Lost in racking"),
    rule("loss-whole", "N(bottling_loss)>=beer_volume", "Lost in racking is as much as the whole batch: nothing is left to fill."),
  ],
});
