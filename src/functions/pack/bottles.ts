import { fillBottles } from "../../core/pack/bottles";
import { describeFunction } from "../describe";
import { number, optional, units, volume } from "../vocabulary";
import { perhapsLitres } from "./perhaps-litres";

export const packBottles = describeFunction({
  id: "PACK.BOTTLES",
  summary: "How many whole bottles a batch fills, and how much beer is left over.",
  parameters: {
    volume: volume("Beer in the vessel that you bottle from."),
    bottleVolume: number("bottleVolume", {
      doc: "What one bottle holds.",
      limits: { atLeast: 50, atMost: 20000 },
      typical: 500,
      hint: perhapsLitres,
    }),
    loss: optional(
      volume("Beer that stays behind with the sediment and in the hose.", {
        limits: { atLeast: 0, atMost: 10000 },
        blank: "zero",
        typical: 0.5,
      }),
      0,
    ),
    units,
    syrup: optional(
      volume("Water that the priming sugar was boiled in: it is bottled, too.", {
        limits: { atLeast: 0, atMost: 1000 },
        blank: "zero",
        typical: 0.5,
      }),
      0,
    ),
  },
  result: { kind: "grid", doc: "Two cells: whole bottles, and the beer left over in L or US gal.", columns: ["bottles", "left over"] },
  equation: "bottles = ⌊(volume − loss + syrup) / bottle⌋; left over = volume − loss + syrup − bottles × bottle",
  sources: [{ cite: "common practice", where: "50 to 54 twelve-ounce bottles from five US gallons" }],
  examples: [
    { arguments: [19, 500, 0.5], value: [[37, 0]], tolerance: 1e-9, from: "worked by hand: 18.5 L / 0.5 L" },
    {
      arguments: [5, 12, null, "us"],
      value: [[53, 0.03125]],
      tolerance: 1e-9,
      from: "worked by hand: 640 fl oz = 53 × 12 + 4; common practice says 50 to 54",
    },
    { arguments: [19, 500, 0.1, null, 0.5], value: [[38, 0.4]], tolerance: 1e-9, from: "worked by hand: 19.4 L / 0.5 L is 38.8" },
  ],
  cautions: [
    "What is left over wants a bottle, too: get that one ready, and a few more. Fill all of them to the same height, and drink or chill the part-filled one first.",
  ],
  compute: ({ volume, bottleVolume, loss, syrup }, { show }) => {
    const { bottles, leftL } = fillBottles(volume, bottleVolume / 1000, loss, syrup);
    return [[bottles, show("volume", leftL)]];
  },
});
