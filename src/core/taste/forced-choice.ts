import { BrewingError } from "../brewing-error";

/**
 * What a test in which every taster has to answer says. By chance alone the right answers follow the binomial distribution
 * (ISO 4120:2021, triangle test, chance 1/3; ISO 10399:2017, duo-trio test, 1/2; ISO 5495:2005, paired comparison test, 1/2).
 */
export interface ForcedChoice {
  /** Probability of so many right answers or more if nobody could tell, 0 to 1. */
  readonly byChance: number;
  /** Fewest right answers of which that is no more likely than the risk; none where not even all of them would do. */
  readonly needed: number | undefined;
}

export interface Answers {
  /** Right answers; of a two-sided test, those for either of the two. */
  readonly right: number;
  readonly all: number;
  /** That one taster is right without telling anything apart. */
  readonly chance: number;
  /** Probability of seeing a difference where there is none, 0 to 1. */
  readonly risk: number;
  /** Which of the two it would be was not known beforehand. */
  readonly twoSided?: boolean;
}

/** @throws BrewingError "impossible" for parts of an answer, and where more are right than were given */
export function forcedChoice({ right, all, chance, risk, twoSided = false }: Answers, name: string): ForcedChoice {
  for (const [argument, count] of Object.entries({ [name]: right, answers: all }))
    if (!Number.isInteger(count)) throw new BrewingError("impossible", `${argument} is ${count}; it must be a whole number`);
  if (right > all) throw new BrewingError("impossible", `${name} is ${right}; it must be at most answers, ${all}`);
  const sides = twoSided ? 2 : 1;
  const counted = twoSided ? Math.max(right, all - right) : right;
  // Added up from the rarest, all right, so that small sums keep their digits.
  let tail = 0;
  let byChance = 1;
  let needed: number | undefined;
  for (const [fewer, probability] of binomial(all, chance).reverse().entries()) {
    tail = Math.min(1, tail + sides * probability);
    if (tail <= risk * (1 + 1e-12)) needed = all - fewer;
    if (all - fewer === counted) byChance = tail;
  }
  return { byChance, needed };
}

/** Probabilities of 0, 1, … all right answers. In logarithms: of a thousand tasters the ends are too small to multiply up. */
function binomial(all: number, chance: number): number[] {
  const odds = Math.log(chance / (1 - chance));
  let logarithm = all * Math.log(1 - chance);
  return Array.from({ length: all + 1 }, (_, right) => {
    if (right > 0) logarithm += Math.log((all - right + 1) / right) + odds;
    return Math.exp(logarithm);
  });
}
