import type { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { BatchContents } from "../contents";
import { fieldRows, section } from "./fields";
import type { UnitWords } from "../unit-words";

/** 5. Yeast: enough living cells, at a temperature they like, and where the gravity should end. */
export function yeast(b: SheetBuilder, { yeast: y }: BatchContents, words: UnitWords): void {
  section(b, 5, "Yeast", "Enough living cells, at a temperature they like");
  fieldRows(
    b,
    [
      ["Yeast", { content: y.name, format: "text", name: "yeast_name" }],
      ["Packs in hand", { content: y.packsInHand, format: "one", name: "packs_in_hand" }],
      [
        "Cells in one pack",
        {
          content: y.cellsPerPack,
          format: "whole",
          unit: "10⁹",
          name: "cells_per_pack",
          note: "Thousand million. A maker guarantees at least 5 to 6 for each gram of dry yeast, real packs often hold 10 to 20 (from memory): the packet comes first.",
        },
      ],
      ["Still alive", { content: y.viabilityPercent, format: "whole", unit: "%", name: "viability" }],
      ["Ferments from", { content: y.fermentFrom, format: "whole", unit: words.temperature, name: "ferment_from" }],
      ["to", { content: y.fermentTo, format: "whole", unit: words.temperature, name: "ferment_to" }],
    ],
    [
      [
        "Cells wanted",
        {
          content: "=GYLE.YEAST.CELLS(volume,og_plan,pitch_rate,units)",
          format: "whole",
          unit: "10⁹, thousand million",
          name: "cells_wanted",
        },
      ],
      ["Packs to pitch", { content: "=GYLE.YEAST.PACKS(cells_wanted,cells_per_pack,viability)", format: "whole", name: "packs_to_pitch" }],
      ["Pitching rate", { content: y.pitchRate, format: "two", unit: "million per mL and °P", name: "pitch_rate" }],
      [
        "Sugar it should eat",
        { content: y.attenuationPercent, format: "whole", unit: "% apparent attenuation", name: "attenuation", between: [1, 100] },
      ],
      ["Pitch at", { content: y.pitchTemperature, format: "whole", unit: words.temperature, name: "pitch_temperature" }],
      ["Cost", { content: y.cost, format: "money", name: "yeast_cost" }],
    ],
  );
}
