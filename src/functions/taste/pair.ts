import { describeFunction } from "../describe";
import { choice, optional } from "../vocabulary";
import { answers, cautions, judged, result, rightAnswers, risk } from "./forced-choice";

export const tastePair = describeFunction({
  id: "TASTE.PAIR",
  summary: "Whether one of two beers is the more bitter, the drier, or the better liked: each taster gets both and chooses one.",
  parameters: {
    chosen: {
      ...rightAnswers,
      doc: "Answers that chose the one that should have more of it (if neither should, those for either); 0 to ask beforehand how many it takes.",
    },
    answers,
    sides: optional(
      choice("one if it was known beforehand which of the two should be chosen; else two, as for the better liked.", ["two", "one"], {
        both: "two",
        "two-sided": "two",
        "one-sided": "one",
      }),
      "two",
    ),
    risk,
  },
  result,
  equation:
    "by chance = Σ C(n, i) / 2^n for i from chosen to n, of two sides twice that from the larger of chosen and n − chosen; needed = the smallest number for which that is at most the risk",
  sources: [
    {
      cite: "ISO 5495:2005, Sensory analysis, paired comparison test",
      where: "the number needed; its table is the binomial distribution, added up",
    },
  ],
  examples: [
    {
      arguments: [15, 20],
      value: [
        ["verdict", "difference shown"],
        ["by chance, %", 4.139],
        ["needed", 15],
      ],
      tolerance: 0.001,
      from: "a printed table of the sign test: 5 of 20 or fewer at 5 % with two tails; the probability added up in fractions by a script apart",
    },
    {
      arguments: [9, 10, "one"],
      value: [
        ["verdict", "difference shown"],
        ["by chance, %", 1.07421875],
        ["needed", 9],
      ],
      tolerance: 1e-9,
      from: "worked by hand: (10 + 1) / 1024; ISO 5495, table A.1",
    },
  ],
  cautions,
  compute: ({ chosen, answers: all, sides, risk: percent }) =>
    judged({ right: chosen, all, chance: 1 / 2, risk: percent / 100, twoSided: sides === "two" }, "chosen"),
});
