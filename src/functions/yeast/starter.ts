import { cultures, starterVolumeL } from "../../core/yeast/starter";
import { describeFunction, type Source } from "../describe";
import { choice, gravity, number, optional, units } from "../vocabulary";

export const starterCells = (doc: string, typical: number) =>
  number("cells", {
    doc,
    limits: { above: 0, atMost: 10000 },
    typical,
    hint: (typed) => (typed >= 1e6 ? `it is in billions: write ${typed / 1e9}` : undefined),
  });

export const starterGravity = optional(
  gravity("Gravity of the starter's wort: 1.036 when left out, some 100 g of dry malt extract to the litre (0.8 lb to the US gallon).", {
    limits: { atLeast: 1.005, atMost: 1.05 },
    typical: 1.036,
  }),
  1.036,
);

export const culture = optional(
  choice(
    "Whether the starter stands still, or is stirred all the time, which grows twice as many new cells; still when left out.",
    cultures,
    {
      "stir plate": "stirred",
      shaken: "still",
    },
  ),
  "still",
);

export const starterEquation =
  "V (L) = cells_now / 100 × (growth / 1.52)^(1 / 0.43), at least 0.5 L for each 100 × 10⁹ cells, and at least (cells_wanted − cells_now) / 1.4 per gram of extract; growth = cells_wanted / cells_now, its part above 1 halved where the culture is stirred";

export const starterSources: readonly Source[] = [
  {
    cite: "C. White and J. Zainasheff, Yeast, 2010",
    where:
      "stirring grows two to three times the yeast; growth of a pack of 100 × 10⁹ cells in 0.5 to 8 L of wort of 1.036; the table from memory, fitted by us",
  },
  {
    cite: "C. J. N. Balling, Die Gährungschemie, 1865",
    where: "0.0532 g of dry yeast from a gram of extract; 38 pg for a cell from memory",
  },
];

export const starterCautions: readonly string[] = [
  "An estimate, ± a quarter and more: nobody counts cells at home. Shaking now and then lies between still and stirred.",
  "Boil the wort, cool it, and sanitise whatever touches it. Never close a starter tight: the gas must get out.",
];

export const yeastStarter = describeFunction({
  id: "YEAST.STARTER",
  summary: "Volume of a starter that grows the yeast you have to the cells that you want.",
  parameters: {
    cellsNow: starterCells("Living cells that you have: packs × cells in each × GYLE.YEAST.VIABILITY / 100.", 100),
    cellsWanted: starterCells("Living cells wanted, as GYLE.YEAST.CELLS gives them.", 180),
    gravity: starterGravity,
    units,
    culture,
  },
  result: { kind: "number", quantity: "volume", doc: "Wort for the starter; 0 when you have cells enough." },
  equation: starterEquation,
  sources: starterSources,
  examples: [
    { arguments: [100, 205], value: 2, tolerance: 0.15, from: "White and Zainasheff, from memory: 205 from a pack of 100 in 2 L" },
    { arguments: [200, 304], value: 2, tolerance: 0.01, from: "worked by hand: two packs in 2 L are as one in 1 L, which gives 152" },
    {
      arguments: [100, 152, 1.036, "us"],
      value: 0.264,
      tolerance: 0.001,
      from: "White and Zainasheff, from memory: 152 in 1 L, which is 0.264 US gal",
    },
    {
      arguments: [100, 204, null, null, "stirred"],
      value: 1,
      tolerance: 0.01,
      from: "worked by hand: 52 new cells in a litre that stands still, 104 where it is stirred",
    },
    { arguments: [180, 150], value: 0, from: "worked by hand: nothing to grow" },
  ],
  cautions: starterCautions,
  compute: ({ cellsNow, cellsWanted, gravity: wort, culture: kept }) => starterVolumeL(cellsNow, cellsWanted, wort, kept),
});
