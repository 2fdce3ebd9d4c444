import { describeFields } from "../../describe/field";
import { degrees, gravities, minutes, volumes } from "../../describe/usual-limits";

/** How a mash is brought to its next rest. */
export const liftedBy = ["boiling water", "decoction", "heating"] as const;

/** Rests after the one of section 3, in their order. */
export const restNames = ["second", "third", "fourth"] as const;
type RestName = (typeof restNames)[number];

const rest = <const Name extends RestName>(name: Name) =>
  ({
    kind: "group",
    since: 4,
    label: `${name.charAt(0).toUpperCase()}${name.slice(1)} rest`,
    fields: describeFields({
      temperature: {
        kind: "number",
        since: 4,
        cell: `${name}_rest`,
        label: `${name} rest at`,
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: 35, to: 85, words: `The ${name} rest at` },
      },
      minutes: {
        kind: "number",
        since: 4,
        cell: `${name}_minutes`,
        label: `${name} rest for`,
        measure: "minutes",
        format: "whole",
        limits: minutes,
        blank: true,
      },
      by: { kind: "choice", since: 4, cell: `${name}_by`, label: `${name} rest by`, choices: liftedBy },
    }),
  }) as const;

const running = <const Name extends "first" | "later">(name: Name, whose: string) =>
  ({
    kind: "group",
    since: 4,
    label: whose,
    fields: describeFields({
      volume: {
        kind: "number",
        since: 4,
        cell: `${name}_running`,
        label: `volume of the ${name} running`,
        role: "measured",
        measure: "volume",
        format: "two",
        limits: volumes,
        blank: true,
      },
      temperature: {
        kind: "number",
        since: 4,
        cell: `${name}_running_at`,
        label: `temperature of the ${name} running`,
        role: "measured",
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: 5, to: 101, words: "A running at" },
      },
      reading: {
        kind: "number",
        since: 4,
        cell: `${name}_reading`,
        label: `reading of the ${name} running`,
        role: "measured",
        format: "gravity",
        limits: gravities,
        blank: true,
      },
      sampleTemperature: {
        kind: "number",
        since: 4,
        cell: `${name}_sample`,
        label: `temperature of the ${name} sample`,
        role: "measured",
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: 0, to: 70, words: "Sample at" },
      },
    }),
  }) as const;

/** Rests beyond the one that every mash has, and what ran off it. Only where malt is mashed. */
export const mashFields = describeFields({
  second: rest("second"),
  third: rest("third"),
  fourth: rest("fourth"),
  first: running("first", "First running"),
  later: running("later", "What runs off after it"),
  scale: { kind: "choice", since: 4, cell: "runnings_scale", label: "Scale of the readings", choices: ["SG", "P"] },
  conversionPercent: {
    kind: "number",
    since: 4,
    cell: "mash_conversion",
    label: "Dissolves in the mash",
    called: "what dissolves in the mash",
    measure: "percent",
    format: "whole",
    limits: [2, 100],
    held: true,
    usual: 95,
    percentOf: "What dissolves",
    note: "Of all that the malt could give: 90 to 100 in a mash that was well crushed and stirred (common practice). The first running's gravity tells yours.",
  },
});
