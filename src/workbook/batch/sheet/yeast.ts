import { tradeWords } from "../../../functions/trade-words";
import { fieldRows, section, type BatchBuilder, type BatchLines } from "./fields";

/** 5. Yeast: enough living cells, at a temperature they like, and where the gravity should end. */
export function yeast(b: BatchBuilder, { yeast: y }: BatchLines): void {
  section(b, 5, "Yeast", "Enough living cells, at a temperature they like");
  fieldRows(
    b,
    [y.name, y.packsInHand, y.cellsPerPack, y.viabilityPercent, y.fermentFrom, y.fermentTo],
    [
      [
        "Cells wanted",
        {
          content: "=GYLE.YEAST.CELLS(volume,og_plan,pitch_rate,units)",
          format: "whole",
          unit: "billion (10⁹)",
          name: "cells_wanted",
        },
      ],
      [
        "Packs to pitch",
        {
          content: "=GYLE.YEAST.PACKS(cells_wanted,cells_per_pack,viability)",
          format: "whole",
          name: "packs_to_pitch",
          note: tradeWords.pitch.means,
        },
      ],
      y.pitchRate,
      y.attenuationPercent,
      y.pitchTemperature,
      y.cost,
    ],
  );
}
