import { steadiness } from "../../core/log/steady";
import { describeFunction } from "../describe";
import { gravity, number, omissible, optional } from "../vocabulary";
import { readingGravities, readingsOf, times } from "./columns";

export const logSteady = describeFunction({
  id: "LOG.STEADY",
  summary: "Says in one word whether the fermentation is over, from your log of gravity readings.",
  parameters: {
    times,
    gravities: readingGravities,
    tolerance: optional(
      number("gravity", { doc: "Difference that still counts as the same reading; 0.001 is one line on most hydrometers.", limits: { above: 0, atMost: 0.01 }, typical: 0.001 }),
      0.001,
    ),
    expected: omissible(gravity("Final gravity you expect, for example from GYLE.YEAST.FINISH. Without it a wort that has not begun looks steady.", { typical: 1.012 })),
  },
  result: {
    kind: "text",
    doc: "working: still falling, or not yet two readings a day apart. nearly: falling by no more than 0.002 a day, or creeping on by a line a day. steady: the readings of the last day agree. stalled: they agree, more than 0.004 above the gravity you expect. rising: it stands above an earlier reading; measure again and clear the wrong row (unless you added sugar or fruit).",
  },
  equation: "steady when the newest reading, one at least 23 h older and all between lie within the tolerance; not when it falls by a third of that a day and fell by more than all of it in two to four days; stalled when newest > expected + 0.004",
  sources: [{ cite: "common practice", where: "two equal readings a day apart mean that fermentation has ended; the limits 0.002 a day and 0.004 from memory; where creeping begins is our judgement" }],
  examples: [
    { arguments: [[[5], [6]], [[1.012], [1.012]]], value: "steady", from: "common practice: two equal readings a day apart" },
    { arguments: [[[5], [6]], [[1.022], [1.022]], null, 1.012], value: "stalled", from: "worked by hand: equal, and 0.010 above the 1.012 expected" },
    { arguments: [[[46114], [46116], [46117]], [[1.03], [1.0145], [1.013]]], value: "nearly", from: "worked by hand: 0.0015 in the last day" },
    { arguments: [[[5], [6], [7], [8]], [[1.015], [1.014], [1.013], [1.012]]], value: "nearly", from: "worked by hand: only a line in the last day, but one every day: 0.002 in two" },
  ],
  cautions: [
    "Bottle only when steady: what is left to ferment makes gas in the bottle and can burst it. Strong or cool beer deserves three readings over three days.",
    "Stalled beer is not finished: rouse the yeast, warm it a little, wait and measure again before you think of bottling.",
  ],
  compute: ({ times: days, gravities: measured, tolerance, expected }) => {
    const readings = readingsOf(days, measured);
    return readings.length === 0 ? "" : steadiness(readings, tolerance, expected);
  },
});
