import { readingsInOrder, type Reading } from "../../core/log/readings";
import { ArgumentProblem } from "../cell-error";
import type { Source } from "../describe";
import { messages } from "../messages";
import { gravities, gravity, list, number, omissible } from "../vocabulary";

/** What the functions over a log of readings share. */
export const times = list(
  "days",
  "When each reading was taken: dates, or days since the yeast went in. The order of the rows does not matter.",
  {
    limits: { atLeast: 0, atMost: 73415 },
    blank: "zero",
    typical: 5,
  },
);

export const readingGravities = gravities("The readings, beside their times; a row without a reading is skipped.");

export const originalGravity = omissible(
  gravity("Gravity of the wort when the yeast went in; the highest reading counts as it when left out."),
);

export const expected = omissible(
  gravity(
    "Final gravity you expect, for example from GYLE.YEAST.FINISH. Known to about 9 points of attenuation; the readings outweigh it as they come in. Without it an answer comes late.",
    { typical: 1.012 },
  ),
);

export const countFrom = omissible(
  number("days", {
    doc: "When something was added that can wake a finished beer up, such as dry hops: only readings a day or more later show that it rests. Left out, all do.",
    limits: { above: 0, atMost: 73415 },
    typical: 6,
  }),
);

export const curveEquation =
  "share done = (1 + (2^s − 1) exp(−r (t − H)))^(−1/s), half of it on day H; weighted least squares, the original and the expected gravity and the usual pace and shape counting like readings; ± = 1.96 × √(g′ (J′WJ + P)⁻¹ g), and the errors of any curve with it";

export const curveSources: readonly Source[] = [
  { cite: "F. J. Richards, J. Exp. Bot. 10, 1959, 290", where: "the curve (from memory); with s = 1 it is the logistic" },
  {
    cite: "R. A. Speers, P. Rogers and B. Smith, J. Inst. Brew. 109(3), 2003, 229",
    where: "that logistic for fermentations (its layout from memory)",
  },
  {
    cite: "JCGM 100:2008, Guide to the expression of uncertainty in measurement",
    where: "4.3.7: what a reading is good to; 5.1.2: from the fit to the forecast",
  },
  {
    cite: "our judgement",
    where:
      "what is known beforehand of attenuation, pace and shape, and the errors of any curve; held against seven other kinds of fermentation in the tests",
  },
];

export function readingsOf(days: readonly (number | null)[], measured: readonly (number | null)[]): Reading[] {
  if (days.length !== measured.length) throw new ArgumentProblem("#VALUE!", messages.sameLength("times", "gravities"));
  return readingsInOrder(days, measured);
}
