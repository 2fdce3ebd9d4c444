import { steadiness } from "../../core/log/steady";
import { describeFunction } from "../describe";
import { gravity, number, omissible, optional } from "../vocabulary";
import { countFrom, originalGravity, readingGravities, readingsOf, times } from "./columns";

export const logSteady = describeFunction({
  id: "LOG.STEADY",
  summary: "Says in one word whether the fermentation is over, from your log of gravity readings.",
  parameters: {
    times,
    gravities: readingGravities,
    tolerance: optional(
      number("gravity", {
        doc: "Difference that still counts as the same reading; 0.001 is one line on most hydrometers.",
        limits: { above: 0, atMost: 0.01 },
        typical: 0.001,
      }),
      0.001,
    ),
    expected: omissible(
      gravity("Final gravity you expect, for example from GYLE.YEAST.FINISH. Without it a stall is told only by half of the points.", {
        typical: 1.012,
      }),
    ),
    originalGravity,
    countFrom,
  },
  result: {
    kind: "text",
    doc: "not begun: as good as nothing has fallen. working: still falling, or not yet two readings a day apart. nearly: falling by no more than 0.002 a day, or not yet surely at rest. steady: at rest. stalled: at rest, but more than 0.003 above the gravity you expect, or with more than half of its points left where you expect none. rising: it stands above an earlier reading; measure again and clear the wrong row (unless you added sugar or fruit). What steady rests on: with fewer than five readings in the last four days and a half, two readings a day apart that agree; from five on all of them, so that a beer that still loses half a point a day is called steady in fewer than one log of ten, a finished one in more than nine (readings good to half a line).",
  },
  equation:
    "fewer than five readings in 4.5 days: steady when the newest reading, one at least 23 h older and all between lie within the tolerance, and three or four of them do not creep by a line in two days; five or more: steady when (mean of those older than 2.75 days − mean of the last 1.75 days + 1.36 standard deviations) ≤ half the tolerance for each day between; readings 0.004 above the newest are left out; stalled when newest > expected + 0.003; with count_from never laxer than without, and steady only when two that agree, a day apart, were both read 23 h or more after it (four readings a day and more: one of them 2.75 days ago)",
  sources: [
    {
      cite: "common practice",
      where: "two equal readings a day apart mean that fermentation has ended; the limit 0.002 a day from memory",
    },
    {
      cite: "JCGM 100:2008, Guide to the expression of uncertainty in measurement",
      where: "4.3.7: what a reading is good to, tolerance/√3; the deviation of a difference of two means as in any text",
    },
    {
      cite: "our judgement",
      where: "0.003 above the expected gravity, half of the points, 1.36 deviations: chosen for the risks named, which the tests measure",
    },
    {
      cite: "K. R. Kirkpatrick and T. H. Shellhammer, J. Agric. Food Chem. 66, 2018, 9121",
      where: "hops bring enzymes that make more of the wort fermentable, so a dry-hopped beer starts over (from memory)",
    },
  ],
  examples: [
    {
      arguments: [
        [[5], [6]],
        [[1.012], [1.012]],
      ],
      value: "steady",
      from: "common practice: two equal readings a day apart",
    },
    {
      arguments: [[[5], [6]], [[1.022], [1.022]], null, 1.012],
      value: "stalled",
      from: "worked by hand: equal, and 0.010 above the 1.012 expected",
    },
    {
      arguments: [
        [[46114], [46116], [46117]],
        [[1.03], [1.0145], [1.013]],
      ],
      value: "nearly",
      from: "worked by hand: 0.0015 in the last day",
    },
    {
      arguments: [
        [[5], [6], [7], [8]],
        [[1.015], [1.014], [1.013], [1.012]],
      ],
      value: "nearly",
      from: "worked by hand: only a line in the last day, but one every day: 0.002 in two",
    },
    {
      arguments: [
        [[1], [2], [3], [4], [5], [6], [7], [8]],
        [[1.016], [1.016], [1.015], [1.015], [1.014], [1.014], [1.013], [1.013]],
      ],
      value: "nearly",
      from: "worked by hand: the newest two are equal, but the last five fall by half a point a day",
    },
    {
      arguments: [[[0], [1]], [[1.05], [1.05]], null, null, 1.05],
      value: "not begun",
      from: "common practice: equal, and no sugar fermented yet",
    },
    {
      arguments: [
        [[1], [2], [3], [4], [5], [6], [7], [8]],
        [[1.016], [1.016], [1.015], [1.015], [1.014], [1.014], [1.013], [1.013]],
        null,
        1.012,
        1.05,
        5.5,
      ],
      value: "nearly",
      from: "worked by hand: the same slow fall, and hops on day 5.5 do not end it",
    },
    {
      arguments: [[[9], [10], [11], [12]], [[1.012], [1.012], [1.012], [1.011]], null, 1.011, 1.05, 11.5],
      value: "working",
      from: "worked by hand: hops went in on day 11.5, and a single reading has been taken since",
    },
  ],
  cautions: [
    "Bottle only when steady: what is left to ferment makes gas in the bottle and can burst it. Strong or cool beer deserves three readings over three days.",
    "Stalled beer is not finished: rouse the yeast, warm it a little, wait and measure again before you think of bottling.",
  ],
  compute: ({ times: days, gravities: measured, tolerance, expected: expectedGravity, originalGravity: original, countFrom: from }) => {
    const readings = readingsOf(days, measured);
    return readings.length === 0 ? "" : steadiness(readings, tolerance, { expectedGravity, originalGravity: original, countFrom: from });
  },
});
