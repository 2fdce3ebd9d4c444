import { quoted } from "../../../functions/formula-text";

/**
 * One thing that the sheet watches. Its condition and its words are native formulas over the sheet's names, so that a sheet goes on
 * judging without the add-in; Check, the pane and Explain ask the same formulas (`what-it-says.ts`).
 */
export interface Rule {
  /** Within its line; `Said.rule` is line and rule together, "volumes.top-up-whole". Stays, whatever the words become. */
  readonly id: string;
  /** Native formula that is TRUE where the rule speaks. */
  readonly holds: string;
  /** Native formula with what is wrong. '""' is a rule by which the line is silent. */
  readonly says: string;
  /** Native formula with what to do; printed behind it. Left out where the words themselves say no more than look. */
  readonly remedy?: string;
  /** Native formula for what stands behind both. */
  readonly after?: string;
}

/** From here on one list or the other, by a native condition. */
export interface Fork {
  readonly when: string;
  readonly then: readonly Step[];
  readonly otherwise: readonly Step[];
}
export type Step = Rule | Fork;

/** A line of the printed checks: the first of its rules that holds speaks. */
export interface CheckLine {
  readonly id: string;
  readonly label: string;
  /** "look" wants a second look; "stop" wants the brewer to wait, since somebody could get hurt or the batch be lost. */
  readonly weight: "look" | "stop";
  /** Lines of print that its longest words take, two if left out: rows of merged cells do not grow by themselves. */
  readonly lines?: 3 | 4;
  readonly steps: readonly Step[];
}

export const isFork = (step: Step): step is Fork => "when" in step;

/** @param says, remedy plain words, or a formula */
export const rule = (id: string, holds: string, says: string, remedy?: string): Rule => ({
  id,
  holds,
  says: asFormula(says),
  ...(remedy !== undefined && { remedy: asFormula(remedy) }),
});

/** Where this holds, the line has nothing more to say. */
export const silent = (id: string, holds: string): Rule => ({ id, holds, says: '""' });

/** Plain words become a text of a formula; what holds a quotation mark, or is nothing but the name of a cell, is one already. */
const asFormula = (words: string): string => (/"|^[a-z_]+$/.test(words) ? words : quoted(words));

/** Two texts that meet become one, with a gap between them. */
function joined(says: string, then: string | undefined): string {
  if (then === undefined) return says;
  return says.endsWith('"') && then.startsWith('"') ? `${says.slice(0, -1)} ${then.slice(1)}` : `${says}&${then}`;
}

export const wordsOf = ({ says, remedy, after }: Rule): string => {
  const both = joined(says, remedy);
  return after === undefined ? both : `${both}&${after}`;
};

/** A whole line as one native formula: the words of the first rule that holds, "" where none does. */
export const messageOf = (steps: readonly Step[]): string =>
  steps.reduceRight(
    (rest, step) =>
      isFork(step) ? `IF(${step.when},${messageOf(step.then)},${messageOf(step.otherwise)})` : `IF(${step.holds},${wordsOf(step)},${rest})`,
    '""',
  );

/** What a line says where one of its own formulas shows an error. */
export const cannotBeChecked = "Cannot be checked: a figure it needs shows an error.";

/** What every line says where our functions are not known. */
export const withoutGylebook = "Gylebook is not here: nothing can be checked.";

/** How words begin about the temperature that sugar goes by: they want a second look. */
export const sugarGoesBy = "Sugar goes by ";

/** How words begin that want a second look, however weighty the line: what cannot be checked, and pressures that hold. */
const asks = ["Cannot", "close:", "within", sugarGoesBy.slice(0, 6), withoutGylebook.slice(0, 6)] as const;

/** The state of a line in which no rule speaks: a check sees only what was typed. */
export const nothingFound = "nothing found";

/** The state of a line as a native formula. @param words cell or text with what the line says */
export const stateOf = (words: string, weight: CheckLine["weight"]): string =>
  `IF(${words}="","${nothingFound}",IF(OR(${asks.map((begins) => `LEFT(${words},6)="${begins}"`).join(",")}),"look","${weight}"))`;
