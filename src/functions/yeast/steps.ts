import { starterSteps } from "../../core/yeast/steps";
import { describeFunction } from "../describe";
import { units } from "../vocabulary";
import { culture, starterCautions, starterCells, starterEquation, starterGravity, starterSources } from "./starter";

export const yeastSteps = describeFunction({
  id: "YEAST.STEPS",
  summary: "A starter in two steps, for little or old yeast: how much wort each takes.",
  parameters: {
    cellsNow: starterCells("Living cells that you have: packs × cells in each × GYLE.YEAST.VIABILITY / 100.", 50),
    cellsWanted: starterCells("Living cells wanted, as GYLE.YEAST.CELLS gives them.", 250),
    gravity: starterGravity,
    culture,
    units,
  },
  result: {
    kind: "grid",
    doc: "Two rows: step, wort (L or US gal), cells when it has grown (billion, 10⁹); no wort where you have cells enough.",
    columns: ["step", "volume", "cells"],
  },
  equation: `between the steps cells = √(cells_now × cells_wanted); each step as GYLE.YEAST.STARTER: ${starterEquation}`,
  sources: starterSources,
  examples: [
    {
      arguments: [50, 115.52],
      value: [
        ["first step", 0.5, 76],
        ["second step", 0.76, 115.52],
      ],
      tolerance: 0.01,
      from: "White and Zainasheff, from memory: 152 from a pack of 100 in 1 L, so 1.52-fold in each step with a litre for each 100; √(50 × 115.52) = 76",
    },
    {
      arguments: [180, 150, null, "stirred", "us"],
      value: [
        ["first step", 0, 180],
        ["second step", 0, 180],
      ],
      tolerance: 1e-9,
      from: "worked by hand: nothing to grow",
    },
  ],
  cautions: ["Let the first step settle cold, pour its beer off, and give the yeast the second wort.", ...starterCautions],
  compute: ({ cellsNow, cellsWanted, gravity, culture: kept }, { show }) =>
    starterSteps(cellsNow, cellsWanted, gravity, kept).map(({ volumeL, cells }, index) => [
      index === 0 ? "first step" : "second step",
      show("volume", volumeL),
      show("cells", cells),
    ]),
});
