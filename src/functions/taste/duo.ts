import { describeFunction } from "../describe";
import { answers, cautions, judged, result, rightAnswers, risk } from "./forced-choice";

export const tasteDuo = describeFunction({
  id: "TASTE.DUO",
  summary:
    "Whether tasters can tell two beers apart: each gets a marked glass first, then both beers, and says which is like the marked one.",
  parameters: {
    correct: { ...rightAnswers, doc: "Answers that named the glass like the marked one; 0 to ask beforehand how many it takes." },
    answers,
    risk,
  },
  result,
  equation: "by chance = Σ C(n, i) / 2^n for i from correct to n; needed = the smallest number for which that is at most the risk",
  sources: [
    {
      cite: "ISO 10399:2017, Sensory analysis, duo-trio test",
      where: "the number needed; its table is the binomial distribution, added up",
    },
  ],
  examples: [
    {
      arguments: [17, 24],
      value: [
        ["verdict", "difference shown"],
        ["by chance, %", 3.196],
        ["needed", 17],
      ],
      tolerance: 0.001,
      from: "ISO 10399, table A.1: 17 of 24 at 5 %; the probability added up in fractions by a script apart",
    },
    {
      arguments: [5, 6],
      value: [
        ["verdict", "no difference shown"],
        ["by chance, %", 10.9375],
        ["needed", 6],
      ],
      tolerance: 1e-9,
      from: "worked by hand: (6 + 1) / 64",
    },
  ],
  cautions,
  compute: ({ correct, answers: all, risk: percent }) => judged({ right: correct, all, chance: 1 / 2, risk: percent / 100 }, "correct"),
});
