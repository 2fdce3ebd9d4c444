import { BrewingError } from "../../core/brewing-error";
import { runnings } from "../../core/mash/runnings";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { list, number, omissible, optional, percent, units, volume } from "../vocabulary";
import { fermentables, toFermentable } from "../wort/fermentables";
import { sugarSolutions } from "../wort/sugar-tables";
import { extractKg } from "../../core/wort/fermentables";

/** "first running": nobody batch-sparges oftener. */
const ordinals = ["first", "second", "third", "fourth", "fifth"];

export const mashRunnings = describeFunction({
  id: "MASH.RUNNINGS",
  summary:
    "Volume and gravity of the wort that runs off a mash, without sparging or with batches of sparge water, and the mash efficiency.",
  parameters: {
    malts: {
      ...fermentables,
      doc: "The malt bill, a row for each; of mash, steep, extract and sugar only what is mashed counts. A fourth column, with the colour, may be selected with it.",
    },
    mashWater: volume("Water in the mash, cold.", { typical: 15 }),
    spargeWater: omissible(
      list("volume", "Sparge water, cold; a cell for each batch when it is split (up to 4). No sparge when left out.", {
        limits: { above: 0, atMost: 10000 },
        typical: 12,
      }),
    ),
    absorption: optional(
      number("absorption", {
        doc: "What the grain keeps: water in, less wort out.",
        limits: { above: 0, atMost: 3 },
        typical: 1,
      }),
      1,
    ),
    deadSpace: optional(volume("Wort left behind under the tap.", { limits: { atLeast: 0, atMost: 1000 }, blank: "zero", typical: 1 }), 0),
    conversion: optional(
      percent("Share of the malt's extract that dissolves in the mash: 90 to 100.", {
        limits: { above: 1, atMost: 100 },
        typical: 95,
        hint: percentHint,
      }),
      95,
    ),
    units,
  },
  result: {
    kind: "grid",
    doc: "Rows: all wort together, the mash efficiency in %, then a row for each running. Volume in L or US gal at 20 °C.",
    columns: ["what", "amount", "gravity"],
  },
  equation:
    "extract = Σ mass × yield × conversion; wort in the tun: water + extract by mass, volume by the density of sugar solutions; first running = mash water − grain × absorption − dead space, with its share of the extract; each sparge thins what stayed, and as much stays again",
  sources: [
    { cite: "mass balance", where: "water and extract are kept; wort alike all through the tun, so stir well" },
    sugarSolutions,
    { cite: "common practice", where: "1.0 L/kg (0.12 US gal/lb) of absorption" },
  ],
  examples: [
    {
      arguments: [[[5, 80, "mash"]], 15],
      value: [
        ["all wort", 10, 1.084],
        ["mash efficiency (%)", 54.75, ""],
        ["first running", 10, 1.084],
      ],
      tolerance: 0.01,
      from: "worked by hand: 3.8 kg of extract and 14.97 kg of water are 20.24 °P, 1.0840 in a sugar table, 219 g/L; 15 − 5 L of it / 4 kg",
    },
    {
      arguments: [[[5, 80, "mash"]], 15, [[6], [6]], 1, 0, 95],
      value: [
        ["all wort", 21.997, 1.0579],
        ["mash efficiency (%)", 82.8, ""],
        ["first running", 10, 1.084],
        ["second running", 6, 1.0464],
        ["third running", 6, 1.0256],
      ],
      tolerance: 0.01,
      from: "computed from the equation; tests/reference/mash drains a tun gram by gram",
    },
    {
      arguments: [[[10, 80, "mash"]], 4, null, 0.12, 0, 95, "us"],
      value: [
        ["all wort", 2.8, 1.0766],
        ["mash efficiency (%)", 58.3, ""],
        ["first running", 2.8, 1.0766],
      ],
      tolerance: 0.01,
      from: "worked by hand: 3.447 kg of extract and 15.114 kg of water are 18.57 °P, 1.0766, 199.6 g/L; 4 − 10 × 0.12 US gal of it / 3.629 kg",
    },
  ],
  cautions: [
    "Sparge water of at most 77 °C, with low alkalinity; stop when the runnings fall below 1.010.",
    "Hot wort scalds: no hand under the tap.",
  ],
  compute: ({ malts, mashWater, spargeWater, absorption, deadSpace, conversion }, { show }) => {
    const mashed = malts.map(toFermentable).filter(({ handling }) => handling === "mash");
    const sparges = (spargeWater ?? []).filter((cell) => cell !== null);
    if (mashed.length === 0) throw new BrewingError("impossible", "malts hold nothing that is mashed");
    if (sparges.length >= ordinals.length)
      throw new BrewingError("impossible", `sparge_water may have ${ordinals.length - 1} batches, not ${sparges.length}`);
    const grain = mashed.reduce((sum, { massKg }) => sum + massKg, 0);
    const { grain: whole } = extractKg(mashed);
    const { each, together } = runnings(grain, (whole * conversion) / 100, mashWater, sparges, absorption, deadSpace);
    return [
      ["all wort", show("volume", together.volumeL), together.gravity],
      ["mash efficiency (%)", (100 * together.extractKg) / whole, ""],
      ...each.map(({ volumeL, gravity }, index) => [`${ordinals[index] ?? ""} running`, show("volume", volumeL), gravity]),
    ];
  },
});
