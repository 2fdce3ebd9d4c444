import { describeFunction } from "../describe";
import { afterBoilCautions, bitternessEquation, bitternessOfEach, bitternessParameters, bitternessSources, formSource } from "./additions";

export const hopsShare = describeFunction({
  id: "HOPS.SHARE",
  summary: "Bitterness that each hop addition brings, in a column beside the additions.",
  parameters: bitternessParameters,
  result: {
    kind: "grid",
    doc: "IBU of each row of the additions, without a heading; empty where a row is not filled in. The sum is GYLE.HOPS.IBU.",
    columns: ["IBU"],
  },
  equation: bitternessEquation,
  sources: [...bitternessSources, formSource],
  examples: [
    {
      arguments: [
        [
          [1.5, 6.4, 60],
          [1, 4.6, 15],
        ],
        5,
        1.08,
        null,
        null,
        "us",
      ],
      value: [[25], [6]],
      tolerance: 0.6,
      from: "Palmer, How to Brew, ch. 5, the two additions",
    },
    {
      arguments: [
        [
          ["Perle", 30, 8, 60],
          ["", "", "", ""],
          ["Saaz", 20, 3.5, 0],
        ],
        20,
        1.05,
      ],
      value: [[27.68], [""], [0]],
      tolerance: 0.01,
      from: "worked by hand: 30 × 1000 × 0.08 × 0.23066 / 20; nothing at 0 minutes while nothing is said of the chilling",
    },
    {
      arguments: [
        [
          [50, 10, "dry"],
          [50, 10, "stand"],
          [50, 10, 0],
          [30, 8, 60],
        ],
        20,
        1.05,
        "kinetic",
        null,
        null,
        60,
        90,
        60,
      ],
      value: [[0], [31.33], [31.33], [32.89]],
      tolerance: 0.02,
      from: "computed by Runge and Kutta's method from the rates of Malowicki and Shellhammer: an hour at 100 °C, then an hour at 90 °C; dropping to 90 °C takes no time here",
    },
  ],
  cautions: ["Select the heading row with the hops or leave it out: the answer begins at the first hop.", ...afterBoilCautions],
  compute: (values, { show }) => {
    const each = bitternessOfEach(values);
    if (each === undefined) return [[""]];
    const column: (string | number)[][] = Array.from({ length: values.additions.height }, () => [""]);
    for (const { rowNumber, ibu } of each) column[rowNumber - 1] = [show("bitterness", ibu)];
    return column;
  },
});
