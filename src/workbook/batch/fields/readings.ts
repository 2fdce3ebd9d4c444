import { describeFields } from "../describe/field";
import { degrees, gravities, volumes } from "../describe/usual-limits";

const scales = ["SG", "P"] as const;

/** A hydrometer is read in a cooled sample (common practice), in °C: what is beyond is a figure in the other unit, most often. */
const warmestSample = 55;

/** 7. Readings: the first one of all, before the yeast, and those of the beer. */
export const readingFields = describeFields({
  wort: {
    kind: "group",
    label: "Wort",
    fields: {
      /** Water that really went in, cold; blank: what the sheet said. */
      collected: {
        kind: "number",
        since: 3,
        cell: "collected",
        label: "Water really collected",
        called: "water collected",
        role: "measured",
        measure: "volume",
        format: "two",
        limits: volumes,
        blank: true,
        note: "Cold, all of it. Leave empty where it was what the sheet says; the kit's boil-off is learned from it.",
      },
      reading: {
        kind: "number",
        cell: "og_reading",
        label: "Reading before the yeast",
        called: "reading",
        role: "measured",
        format: "gravity",
        limits: gravities,
        blank: true,
        note: "From a well-stirred sample, after any top-up water is mixed in.",
      },
      scale: { kind: "choice", cell: "og_scale", label: "Scale", choices: scales },
      sampleTemperature: {
        kind: "number",
        cell: "og_temperature",
        label: "Sample temperature",
        role: "measured",
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: 0, to: warmestSample, words: "Sample at" },
      },
      volume: {
        kind: "number",
        cell: "volume_reached",
        label: "Volume in the fermenter",
        called: "volume",
        role: "measured",
        measure: "volume",
        format: "two",
        limits: volumes,
        blank: true,
      },
    },
  },
  readings: {
    kind: "table",
    label: "Readings",
    role: "measured",
    areas: { reading_times: "A:A", readings: "B:B", beer_temperatures: "E:E" },
    longest: 300,
    columns: {
      when: { kind: "moment", column: "A", label: "When", called: "day and time", format: "dateTime", needed: true },
      reading: { kind: "number", column: "B", label: "Reading", format: "gravity", limits: gravities, needed: true },
      scale: { kind: "choice", column: "C", label: "Scale", choices: scales, message: "SG or P (degrees Plato)." },
      sampleTemperature: {
        kind: "number",
        column: "D",
        label: "Sample",
        called: "sample temperature",
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: -2, to: warmestSample, words: "Sample at" },
      },
      beerTemperature: {
        kind: "number",
        column: "E",
        cell: "beer_temperatures",
        label: "Beer",
        called: "beer temperature",
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: -4, to: 45, words: "Beer at" },
      },
    },
  },
});
