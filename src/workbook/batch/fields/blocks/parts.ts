import { bottleKinds, carbonationLimits } from "../../../../core/pack/bottle-kinds";
import { primingSugars } from "../../../../core/pack/priming";
import { describeFields } from "../../describe/field";
import { degrees, gravities, volumes } from "../../describe/usual-limits";

/** Parts that one wort may be packaged in. */
export const partNames = ["one", "two", "three", "four"] as const;
export type PartName = (typeof partNames)[number];

const at = <const Column extends number>(row: number, column: Column) => ["wort_parts", row, column] as const;

/** A column of the block. What is left empty is as in section 8. */
const part = <const Column extends number>(column: Column) => {
  const whose = `of part ${column + 1}`;
  const base = { since: 4 } as const;
  return {
    kind: "group",
    since: 4,
    label: `Part ${column + 1}`,
    fields: describeFields({
      name: { ...base, kind: "text", within: at(0, column), label: "Part", called: `name ${whose}`, longest: 60 },
      volume: {
        ...base,
        kind: "number",
        within: at(1, column),
        label: "Beer in it",
        called: `beer ${whose}`,
        measure: "volume",
        format: "two",
        limits: volumes,
        blank: true,
        grows: true,
      },
      into: {
        ...base,
        kind: "text",
        within: at(2, column),
        label: "Into",
        called: `into what, ${whose}`,
        longest: 20,
        offers: ["bottles", "keg"],
      },
      co2Volumes: {
        ...base,
        kind: "number",
        within: at(3, column),
        label: "Target carbonation",
        called: `carbonation ${whose}`,
        measure: "co2",
        format: "one",
        limits: [carbonationLimits.atLeast, carbonationLimits.atMost],
        held: true,
        blank: true,
      },
      warmestSinceFermentation: {
        ...base,
        kind: "number",
        within: at(4, column),
        label: "Warmest since it finished",
        called: `warmest since it finished, ${whose}`,
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: -2, to: 45, words: "Beer at" },
      },
      warmestPlace: {
        ...base,
        kind: "number",
        within: at(5, column),
        label: "Warmest place, or the keg's",
        called: `warmest place ${whose}`,
        measure: "temperature",
        format: "whole",
        limits: degrees,
        blank: true,
        plausible: { from: -3, to: 50, words: "A place at" },
      },
      bottleKind: {
        ...base,
        kind: "text",
        within: at(6, column),
        label: "Kind of bottle",
        called: `kind of bottle ${whose}`,
        longest: 120,
        offers: bottleKinds,
      },
      bottleVolume: {
        ...base,
        kind: "number",
        within: at(7, column),
        label: "One bottle holds",
        called: `what a bottle ${whose} holds`,
        measure: "bottleVolume",
        format: "whole",
        limits: [0, 100000],
        blank: true,
        plausible: { from: 90, to: 5500, words: "A bottle of" },
      },
      sugar: {
        ...base,
        kind: "text",
        within: at(8, column),
        label: "Priming sugar",
        called: `sugar ${whose}`,
        longest: 120,
        offers: primingSugars,
      },
      gravity: {
        ...base,
        kind: "number",
        within: at(9, column),
        label: "Gravity now, of its own yeast",
        called: `gravity ${whose}`,
        role: "measured",
        format: "gravity",
        limits: gravities,
        blank: true,
      },
      endsAt: {
        ...base,
        kind: "number",
        within: at(10, column),
        label: "and at which it ends",
        called: `gravity at which part ${column + 1} ends`,
        format: "gravity",
        limits: gravities,
        blank: true,
      },
      bottlesFilled: {
        ...base,
        kind: "number",
        within: at(11, column),
        label: "Bottles filled",
        called: `bottles filled ${whose}`,
        role: "measured",
        format: "whole",
        limits: [0, 1e6],
        blank: true,
      },
      kegFilled: {
        ...base,
        kind: "number",
        within: at(12, column),
        label: "Filled into kegs",
        called: `filled into kegs ${whose}`,
        role: "measured",
        measure: "volume",
        format: "two",
        limits: volumes,
        blank: true,
      },
    }),
  } as const;
};

/** One wort in several packagings: half into a keg and half into bottles, or with two yeasts. */
export const partsFields = describeFields({ one: part(0), two: part(1), three: part(2), four: part(3) });

export type PartField = keyof (typeof partsFields)["one"]["fields"];

/** In the order of the block's rows. */
export const partKeys = Object.keys(partsFields.one.fields) as readonly PartField[];

/** The row of the block in which a field of every part stands, from 1, as INDEX counts. */
export const partRow = (key: PartField): number => partsFields.one.fields[key].within[1] + 1;
