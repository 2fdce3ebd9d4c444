import { num } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm, ValueOnly } from "./plain-form";

/** A test with a forced answer, in the binomial functions of every spreadsheet program; see `core/taste/forced-choice.ts`. */
function forcedChoice(right: string, wrongByChance: string, sides: (x: PlainArguments) => string): PlainForm {
  const risk = (x: PlainArguments): string => `${x.core("risk")}/100/${sides(x)}`;
  // Counted by the wrong answers, so that small probabilities keep their digits. CRITBINOM is the first number of them that is too
  // many; one less may be wrong.
  const needed = (x: PlainArguments): string =>
    `(${x.core("answers")}-CRITBINOM(${x.core("answers")},${wrongByChance},${risk(x)}*(1+1E-12))+1)`;
  const counted = (x: PlainArguments): string => {
    const [some, all] = [x.core(right), x.core("answers")];
    return `IF(${sides(x)}=1,${some},MAX(${some},${all}-${some}))`;
  };
  const byChance = (x: PlainArguments): string =>
    `MIN(1,${sides(x)}*BINOMDIST(${x.core("answers")}-${counted(x)},${x.core("answers")},${wrongByChance},TRUE))`;
  return {
    size: () => ({ rows: 3, columns: 2 }),
    holds: (x) => {
      const [some, all] = [x.core(right), x.core("answers")];
      return [`${some}<=${all}`, `INT(${some})=${some}`, `INT(${all})=${all}`];
    },
    sum: (x, { row, column }) => {
      if (column === 0) return ['"verdict"', '"by chance, %"', '"needed"'][row] ?? '""';
      const tooFew = `${needed(x)}>${x.core("answers")}`;
      if (row === 0) return `IF(${tooFew},"too few tasters",IF(${counted(x)}>=${needed(x)},"difference shown","no difference shown"))`;
      return row === 1 ? `100*${byChance(x)}` : `IF(${tooFew},"",${needed(x)})`;
    },
  };
}

const once = (): string => "1";

export const tasteForms = {
  "TASTE.TRIANGLE": forcedChoice("correct", "2/3", once),
  "TASTE.DUO": forcedChoice("correct", num(0.5), once),
  "TASTE.PAIR": forcedChoice("chosen", num(0.5), (x) => x.choice("sides", { two: "2", one: "1" })),
  "TASTE.AGREE": { value: "it counts all the orders into which tasters might have put the beers" },
} satisfies Record<string, PlainForm | ValueOnly>;
