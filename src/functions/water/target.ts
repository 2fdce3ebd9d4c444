import { ionNames, saltNames, type SaltName } from "../../core/water/ions";
import { waterPlan } from "../../core/water/target";
import { describeFunction } from "../describe";
import { choice, omissible, optional, units, volume } from "../vocabulary";
import { ionLabel } from "./ion-rows";
import { otherSaltNames } from "./ions";
import { sixIons, waterFrom } from "./six-ions";

const offered = saltNames.filter((name) => name !== "chalk");
type Offered = (typeof offered)[number];
/** "chalk" among what they mean is refused as any other word. */
const otherOffered = otherSaltNames as Readonly<Record<string, string>> as Readonly<Record<string, Offered>>;
/** What a brewer is likely to have; no lye unless it is asked for. */
const usual: readonly SaltName[] = ["gypsum", "calcium chloride", "epsom salt", "table salt", "baking soda"];

export const waterTarget = describeFunction({
  id: "WATER.TARGET",
  summary: "Salts, and demineralised water, that bring a water nearest to the one you want.",
  parameters: {
    base: {
      ...sixIons,
      doc: "Your water, six numbers: calcium, magnesium, sodium, chloride, sulfate, bicarbonate; an empty cell counts as 0.",
    },
    target: { ...sixIons, doc: "The water wanted, the same six." },
    volume: volume("Water wanted in all."),
    salts: omissible({
      kind: "table",
      doc: `The salts you have, one below the other, of: ${offered.join(", ")}. Left out: the first two, epsom salt, table salt, baking soda.`,
      columns: { salt: choice("Its name.", offered, otherOffered) },
      layouts: [["salt"]],
    }),
    dilute: optional(choice("Whether demineralised water may be mixed in.", ["yes", "no"]), "yes"),
    units,
  },
  result: {
    kind: "grid",
    doc: "Your water and demineralised water in L or US gal, each salt in g, also with us units, then the six ions reached in mg/L.",
    columns: ["what", "amount", "unit"],
  },
  equation: "Σ (ion reached − ion wanted)² in mg/L made as small as it can be, with no amount below 0",
  sources: [
    { cite: "C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, 1974", where: "ch. 23, non-negative least squares" },
    { cite: "stoichiometry with atomic weights", where: "salts with their water of crystallisation, as in WATER.IONS" },
  ],
  examples: [
    {
      arguments: [[[0], [0], [0], [0], [0], [0]], [[46.6], [0], [0], [0], [111.6], [0]], 20, [["gypsum"]]],
      value: [
        ["your water", 20, "L"],
        ["demineralised water", 0, "L"],
        ["gypsum", 4, "g"],
        ["calcium (Ca)", 46.57, "mg/L"],
        ["magnesium (Mg)", 0, "mg/L"],
        ["sodium (Na)", 0, "mg/L"],
        ["chloride (Cl)", 0, "mg/L"],
        ["sulfate (SO4)", 111.61, "mg/L"],
        ["bicarbonate (HCO3)", 0, "mg/L"],
      ],
      tolerance: 0.05,
      from: "the other way round of an example of WATER.IONS: 4 g of gypsum in 20 L give 46.6 Ca and 111.6 SO4",
    },
    {
      arguments: [[[120, 10, 20, 30, 50, 300]], [[72, 6, 12, 18, 30, 180]], 5, null, "yes", "us"],
      value: [
        ["your water", 3, "US gal"],
        ["demineralised water", 2, "US gal"],
        ["gypsum", 0, "g"],
        ["calcium chloride", 0, "g"],
        ["epsom salt", 0, "g"],
        ["table salt", 0, "g"],
        ["baking soda", 0, "g"],
        ["calcium (Ca)", 72, "mg/L"],
        ["magnesium (Mg)", 6, "mg/L"],
        ["sodium (Na)", 12, "mg/L"],
        ["chloride (Cl)", 18, "mg/L"],
        ["sulfate (SO4)", 30, "mg/L"],
        ["bicarbonate (HCO3)", 180, "mg/L"],
      ],
      tolerance: 1e-6,
      from: "worked by hand: six tenths of every ion, as in an example of WATER.BLEND",
    },
  ],
  cautions: [
    "Nearest need not be near: look at the ions reached. No salt takes an ion away.",
    "Only food-grade salts, and weigh them. Slaked lime burns skin and eyes: goggles and gloves.",
  ],
  compute: ({ base, target, volume, salts, dilute }, { units: system, show }) => {
    const allowed = salts === undefined ? usual : offered.filter((name) => salts.some(({ salt }) => salt === name));
    const { dilution, additions, reached } = waterPlan(
      waterFrom("base", base),
      waterFrom("target", target),
      volume,
      allowed,
      dilute === "yes",
    );
    const litres = system === "us" ? "US gal" : "L";
    return [
      ["your water", show("volume", volume * (1 - dilution)), litres],
      ["demineralised water", show("volume", volume * dilution), litres],
      ...additions.map(({ salt, massG }) => [salt, massG, "g"]),
      ...ionNames.map((ion) => [ionLabel(ion), reached[ion], "mg/L"]),
    ];
  },
});
