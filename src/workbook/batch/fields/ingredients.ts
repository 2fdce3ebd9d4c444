import { hopPlaces } from "../../../core/hops/places";
import { describeFields } from "../describe/field";
import { degrees, minutes, percents, prices } from "../describe/usual-limits";

/** 3. Malt and sugar, and 4. hops. */
export const ingredientFields = describeFields({
  malt: {
    kind: "table",
    label: "Malt",
    areas: { malt: "B:E", malt_mass: "B:B", malt_handling: "D:D", malt_cost: "F:F" },
    longest: 40,
    columns: {
      ingredient: { kind: "text", column: "A", label: "Ingredient", longest: 120 },
      mass: { kind: "number", column: "B", label: "Mass", measure: "mass", format: "two", limits: [0, 1000], held: true },
      /** Extract that the ingredient can give, % of its mass as bought. */
      yieldPercent: {
        kind: "number",
        column: "C",
        label: "Yield",
        measure: "percent",
        format: "one",
        limits: percents,
        held: true,
        percentOf: "A yield",
      },
      handling: {
        kind: "choice",
        column: "D",
        label: "Handling",
        choices: ["mash", "steep", "extract", "sugar"],
        otherwise: "extract",
        message: "mash, steep, extract or sugar.",
      },
      colour: { kind: "number", column: "E", label: "Colour", measure: "maltColour", format: "one", limits: [0, 2000] },
      cost: { kind: "number", column: "F", label: "Cost", role: "price", format: "money", limits: prices, blank: true },
      remark: { kind: "text", column: "H", label: "Remark", longest: 300, optional: true, beside: true },
    },
  },
  hops: {
    kind: "table",
    label: "Hops",
    areas: { hops: "B:D", hop_plan: "A:D", hop_alpha: "C:C", hop_minutes: "D:D", hop_cost: "F:F" },
    longest: 40,
    columns: {
      hop: { kind: "text", column: "A", label: "Hop", longest: 120 },
      mass: {
        kind: "number",
        column: "B",
        label: "Mass",
        measure: "smallMass",
        format: { us: "two", metric: "one" },
        limits: [0, 50000],
        held: true,
      },
      alphaPercent: {
        kind: "number",
        column: "C",
        cell: "hop_alpha",
        label: "Alpha",
        called: "alpha acid",
        measure: "percent",
        format: "one",
        limits: percents,
      },
      /** Minutes left in the boil when it goes in, or where else it goes in. */
      minutes: {
        kind: "number",
        column: "D",
        label: "Minutes left",
        called: "minutes",
        format: "whole",
        limits: minutes,
        words: hopPlaces,
      },
      form: { kind: "text", column: "E", label: "Form", longest: 120, general: true },
      cost: { kind: "number", column: "F", label: "Cost", role: "price", format: "money", limits: prices, blank: true },
      remark: { kind: "text", column: "H", label: "Remark", longest: 300, optional: true, beside: true },
    },
  },
  /** Hops left in the hot wort after the boil; blank where there is no such stand. */
  hopStand: {
    kind: "group",
    label: "Hop stand",
    since: 3,
    fields: {
      temperature: {
        kind: "number",
        since: 3,
        cell: "stand_temperature",
        label: "Hop stand after the boil, at",
        called: "temperature",
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        note: "Hops whose “Minutes left” says stand go in at this temperature. Leave empty where there is no stand.",
      },
      minutes: {
        kind: "number",
        since: 3,
        cell: "stand_minutes",
        label: "The stand lasts",
        called: "minutes",
        measure: "minutes",
        format: "whole",
        limits: minutes,
        blank: true,
      },
    },
  },
  /** Day on which hops went into the fermenter. */
  dryHoppedOn: {
    kind: "moment",
    since: 3,
    cell: "dry_hopped_on",
    label: "Dry hops went in on",
    called: "dry hopped on",
    role: "measured",
    format: "date",
    blank: true,
    note: "Hops in finished beer can wake the fermentation up: only readings a day or more later show that it has ended.",
  },
});
