import { describeFunction } from "../describe";
import { bitternessOfEach, bitternessParameters, bitternessSources } from "./additions";

export const hopsShare = describeFunction({
  id: "HOPS.SHARE",
  summary: "Bitterness that each hop addition brings, in a column beside the additions.",
  parameters: bitternessParameters,
  result: { kind: "grid", doc: "IBU of each row of the additions, without a heading; empty where a row is not filled in. The sum is GYLE.HOPS.IBU.", columns: ["IBU"] },
  equation: "IBU = mass (g) × 1000 × alpha × utilisation(minutes × k1(boils_at) / k1(100 °C), gravity) / volume (L); kinetic has boils_at in its rates, see GYLE.HOPS.UTILISATION",
  sources: bitternessSources,
  examples: [
    { arguments: [[[1.5, 6.4, 60], [1, 4.6, 15]], 5, 1.08, null, null, "us"], value: [[25], [6]], tolerance: 0.6, from: "Palmer, How to Brew, ch. 5, the two additions" },
    { arguments: [[["Perle", 30, 8, 60], ["", "", "", ""], ["Saaz", 20, 3.5, 0]], 20, 1.05], value: [[27.68], [""], [0]], tolerance: 0.01, from: "worked by hand: 30 × 1000 × 0.08 × 0.23066 / 20; nothing at 0 minutes" },
  ],
  cautions: ["Select the heading row with the hops or leave it out: the answer begins at the first hop."],
  compute: ({ additions, volume, gravity, model, boilsAt }, { show }) => {
    const column: (string | number)[][] = Array.from({ length: additions.height }, () => [""]);
    for (const { rowNumber, ibu } of bitternessOfEach(additions, { volumeL: volume, gravity, model, boilsAtC: boilsAt })) column[rowNumber - 1] = [show("bitterness", ibu)];
    return column;
  },
});
