import { forcedChoice, type Answers } from "../../core/taste/forced-choice";
import { percentHint } from "../share-of-one";
import { number, optional } from "../vocabulary";

/** What the tests with a forced answer share. */
export const answers = number("count", {
  doc: "Answers given. Everybody has to answer: who tastes nothing guesses.",
  limits: { atLeast: 1, atMost: 1000 },
  typical: 24,
});

export const rightAnswers = number("count", {
  doc: "Right answers; 0 to ask beforehand how many it takes.",
  limits: { atLeast: 0, atMost: 1000 },
  typical: 13,
  blank: "waits",
});

export const risk = optional(
  number("percent", {
    doc: "Risk of seeing a difference where there is none, %: 5 when left out.",
    limits: { atLeast: 0.5, atMost: 20 },
    typical: 5,
    hint: percentHint,
  }),
  5,
);

export const result = {
  kind: "grid",
  doc: "Three labelled rows: verdict (difference shown, no difference shown, or too few tasters where not even all of them right would do); by chance, the probability in % of so many right answers if nobody could tell; needed, the fewest right answers that show a difference.",
  columns: ["what", "value"],
} as const;

export const cautions = [
  "No difference shown is not the same as alike: few tasters miss even a plain difference. Fix the number of tasters and the risk before anybody tastes.",
];

export const judged = (given: Answers, name: string): (string | number)[][] => {
  const { byChance, needed } = forcedChoice(given, name);
  return [
    ["verdict", verdict(needed === undefined, byChance <= given.risk * (1 + 1e-12))],
    ["by chance, %", 100 * byChance],
    ["needed", needed ?? ""],
  ];
};

export const verdict = (tooFew: boolean, isShown: boolean): string =>
  tooFew ? "too few tasters" : isShown ? "difference shown" : "no difference shown";
