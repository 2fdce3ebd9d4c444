import { packsToPitch } from "../../core/yeast/cells";
import { describeFunction } from "../describe";
import { number, optional, percent } from "../vocabulary";
import { percentHint } from "../share-of-one";

const inThousandMillions = (typed: number): string | undefined => (typed >= 1e6 ? `it is in billions: write ${typed / 1e9}` : undefined);

export const yeastPacks = describeFunction({
  id: "YEAST.PACKS",
  summary: "How many packs of yeast to buy for the cells wanted, rounded up to whole packs.",
  parameters: {
    cells: number("cells", {
      doc: "Living cells wanted, as GYLE.YEAST.CELLS gives them.",
      limits: { above: 0, atMost: 200000 },
      typical: 180,
      hint: inThousandMillions,
    }),
    perPack: number("cells", {
      doc: "Cells in a fresh pack, by its label. Often about 100 in liquid yeast; 10 for each gram of dry yeast, of which makers vouch for 5 to 6.",
      limits: { above: 0, atMost: 10000 },
      typical: 100,
      hint: inThousandMillions,
    }),
    viability: optional(
      percent("Share of the cells still alive, %: 100 when left out.", {
        limits: { above: 1, atMost: 100 },
        typical: 90,
        hint: percentHint,
      }),
      100,
    ),
  },
  result: { kind: "number", quantity: "count", doc: "Whole packs, rounded up." },
  equation: "packs = ⌈cells / (per pack × viability)⌉",
  sources: [{ cite: "common practice", where: "a part-used packet is not kept; figures for packs from memory" }],
  examples: [
    { arguments: [180, 100], value: 2, from: "worked by hand: 1.8, rounded up" },
    { arguments: [180, 100, 80], value: 3, from: "worked by hand: 180 / 80 = 2.25, rounded up" },
    { arguments: [180, 60], value: 3, from: "worked by hand: exactly 3" },
  ],
  cautions: ["One pack of dry yeast can be plenty for a small batch of everyday beer; the maker's dose on the packet comes first."],
  compute: ({ cells, perPack, viability }) => packsToPitch(cells, perPack, viability),
});
