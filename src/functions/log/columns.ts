import { readingsInOrder, type Reading } from "../../core/log/readings";
import { ArgumentProblem } from "../cell-error";
import type { Source } from "../describe";
import { messages } from "../messages";
import { gravities, gravity, list, omissible } from "../vocabulary";

/** What the functions over a log of readings share. */
export const times = list("days", "When each reading was taken: dates, or days since the yeast went in. The order of the rows does not matter.", {
  limits: { atLeast: 0, atMost: 73415 },
  blank: "zero",
  typical: 5,
});

export const readingGravities = gravities("The readings, beside their times; a row without a reading is passed over.");

export const originalGravity = omissible(gravity("Gravity of the wort when the yeast went in; the first reading counts as it when left out."));

export const expected = omissible(
  gravity("Final gravity you expect, for example from GYLE.YEAST.FINISH. Needed with fewer than five readings, and to tell a stall from the end.", { typical: 1.012 }),
);

export const curveSources: readonly Source[] = [
  { cite: "R. A. Speers, P. Rogers and B. Smith, J. Inst. Brew. 109(3), 2003, 229", where: "four-parameter logistic (its layout from memory)" },
  { cite: "A. J. MacIntosh et al., Fermentation 7, 2021, 13", where: "the same model applied: ends, midpoint, steepest fall" },
  { cite: "JCGM 100:2008, Guide to the expression of uncertainty in measurement", where: "4.3.7 and G.4.2: what a reading is good to; 5.1.2: from the fit to the forecast" },
];

export function readingsOf(days: readonly (number | null)[], measured: readonly (number | null)[]): Reading[] {
  if (days.length !== measured.length) throw new ArgumentProblem("#VALUE!", messages.sameLength("times", "gravities"));
  return readingsInOrder(days, measured);
}
