import { describeFunction } from "../describe";
import { answers, cautions, judged, result, rightAnswers, risk } from "./forced-choice";

export const tasteTriangle = describeFunction({
  id: "TASTE.TRIANGLE",
  summary: "Whether tasters can tell two beers apart: each gets three glasses, two of them the same, and picks the odd one out.",
  parameters: {
    correct: { ...rightAnswers, doc: "Answers that named the odd glass; 0 to ask beforehand how many it takes." },
    answers,
    risk,
  },
  result,
  equation:
    "by chance = Σ C(n, i) (1/3)^i (2/3)^(n − i) for i from correct to n; needed = the smallest number for which that is at most the risk",
  sources: [
    {
      cite: "ISO 4120:2021, Sensory analysis, triangle test",
      where: "the number needed; its table is the binomial distribution, added up",
    },
  ],
  examples: [
    {
      arguments: [13, 24],
      value: [
        ["verdict", "difference shown"],
        ["by chance, %", 2.84],
        ["needed", 13],
      ],
      tolerance: 0.01,
      from: "FAO, document V7180E, appendix A: 13 of 24 at 5 %; the probability added up in fractions by a script apart",
    },
    {
      arguments: [4, 5],
      value: [
        ["verdict", "difference shown"],
        ["by chance, %", 4.5267],
        ["needed", 4],
      ],
      tolerance: 0.0001,
      from: "worked by hand: (5 × 2 + 1) / 243",
    },
  ],
  cautions: [...cautions, "Serve the six orders of the glasses equally often, in glasses that look alike: colour gives a beer away."],
  compute: ({ correct, answers: all, risk: percent }) => judged({ right: correct, all, chance: 1 / 3, risk: percent / 100 }, "correct"),
});
