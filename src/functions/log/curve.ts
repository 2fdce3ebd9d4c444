import { bandOnDay, fitFermentation } from "../../core/log/fit";
import { isDated } from "../../core/log/readings";
import { describeFunction } from "../describe";
import { list } from "../vocabulary";
import { countFrom, curveEquation, curveSources, expected, originalGravity, readingGravities, readingsOf, times } from "./columns";

export const logCurve = describeFunction({
  id: "LOG.CURVE",
  summary: "The fitted fermentation curve at times of your choice, with its band, for a chart beside your readings.",
  parameters: {
    times,
    gravities: readingGravities,
    at: list(
      "days",
      "Times at which the curve is wanted, of the same kind as the readings' times. A blank cell among dates gives a blank row; among days it is day 0.",
      { limits: { atLeast: 0, atMost: 73415 }, typical: 4, blank: "zero" },
    ),
    originalGravity,
    expected,
    countFrom,
  },
  result: {
    kind: "grid",
    doc: "A row for each time: gravity on the curve, and the low and high edge of the band that holds the curve 19 times out of 20. A log that has stalled goes on level.",
    columns: ["gravity", "low", "high"],
  },
  equation: curveEquation,
  sources: curveSources,
  examples: [
    {
      arguments: [
        [[0], [1], [2], [3], [5], [8]],
        [[1.0491], [1.0462], [1.0372], [1.0228], [1.0109], [1.01]],
        [[2.5], [10]],
      ],
      value: [
        [1.03, 1.0285, 1.0315],
        [1.01, 1.0089, 1.011],
      ],
      tolerance: 0.0007,
      from: "readings made from a logistic with ends 1.050 and 1.010, 1.5 a day, half way on day 2.5, and at the end by 10",
    },
    {
      arguments: [[[0], [2], [3]], [[1.04857], [1.04], [1.03]], [[3], [4]], 1.05, 1.01],
      value: [
        [1.03, 1.0287, 1.0313],
        [1.021, 1.017, 1.0255],
      ],
      tolerance: 0.0015,
      from: "worked by hand as a logistic: half of the fall is left on day 3 and a quarter, 1.020, on day 4; with a longer tail more. The band is computed",
    },
  ],
  cautions: ["The curve beyond your last reading is a forecast, no reading: bottle only when GYLE.LOG.STEADY says steady."],
  compute: ({ times: days, gravities: measured, at, originalGravity: original, expected: expectedGravity, countFrom: from }) => {
    const readings = readingsOf(days, measured);
    if (readings.length === 0) return [[""]];
    const fit = fitFermentation(readings, { originalGravity: original, expectedGravity, countFrom: from });
    const dated = isDated(days);
    return at.map((day) => {
      if (day === null || (dated && day === 0)) return ["", "", ""];
      const { gravity, low, high } = bandOnDay(fit, day);
      return [gravity, low, high];
    });
  },
});
