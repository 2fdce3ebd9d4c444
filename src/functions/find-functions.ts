import { argumentName, type AnyDescriptor, type Parameter } from "./describe";
import { registry } from "./registry";
import { searchWords } from "./search-words";

/** Words that a question is made of, and that tell no function from another. */
const fillers = new Set(
  "a an and are at be do does for from how i in is it long many me much my of on or s should t the to when will with".split(" "),
);

/** A colour may be spelt color, an isomerisation with a z; several bottles are found by one. */
const bare = (text: string): string =>
  text
    .toLowerCase()
    .normalize("NFKD")
    .replaceAll("colour", "color")
    .replaceAll("sulph", "sulf")
    .replace(/is(ing|ed?|er|ation)\b/g, "iz$1");

/** What a word is looked for as: without the ending of a plural or of a doing, since what begins alike is found. */
const stem = (word: string): string =>
  word.length > 5 && word.endsWith("ing")
    ? word.slice(0, -3)
    : word.length > 3 && word.endsWith("s") && !word.endsWith("ss")
      ? word.slice(0, -1)
      : word;

/** What each function may be found by, and how much a word found there says: in its name, in its words, in an argument's name. */
interface Findable {
  readonly descriptor: AnyDescriptor;
  readonly name: string;
  readonly words: string;
  readonly arguments: string;
}

const findables: readonly Findable[] = registry.map((descriptor) => ({
  descriptor,
  name: bare(`gyle.${descriptor.id}`),
  words: bare(`${descriptor.summary} ${searchWords[descriptor.id] ?? ""}`),
  arguments: bare(
    Object.entries(descriptor.parameters as Record<string, Parameter>)
      .map(
        ([key, parameter]) =>
          `${argumentName(key).replaceAll("_", " ")} ${parameter.kind === "choice" && key !== "units" ? parameter.choices.join(" ") : ""}`,
      )
      .join(" "),
  ),
}));

const startsIn = (text: string, word: string): boolean =>
  new RegExp(`(^|[^\\p{L}\\p{N}])${word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}`, "u").test(text);

function worth({ name, words, arguments: names }: Findable, word: string): number {
  if (startsIn(name, word)) return 4;
  if (startsIn(words, word)) return 3;
  return startsIn(names, word) ? 1 : 0;
}

/**
 * The functions that a brewer may mean, the likeliest first: those that know every word. Where none does, those that
 * know the most of them. Nothing typed finds all, in the order of the brewery.
 */
export function findFunctions(question: string): readonly AnyDescriptor[] {
  const typed = bare(question)
    .split(/[^\p{L}\p{N}.:%°±-]+/u)
    .filter((word) => /[\p{L}\p{N}±%]/u.test(word));
  const telling = typed.filter((word) => !fillers.has(word));
  const words = (telling.length > 0 ? telling : typed).map(stem);
  if (words.length === 0) return registry;
  const judged = findables.map((findable) => {
    const worths = words.map((word) => worth(findable, word));
    return {
      descriptor: findable.descriptor,
      known: worths.filter((each) => each > 0).length,
      sum: worths.reduce((sum, each) => sum + each, 0),
    };
  });
  const most = Math.max(...judged.map(({ known }) => known));
  if (most === 0) return [];
  // A phrase as the table of other words has it says more than its words apart.
  const phrase = typed.join(" ");
  const rank = ({ descriptor, sum }: (typeof judged)[number]): number =>
    sum + (typed.length > 1 && startsIn(bare(searchWords[descriptor.id] ?? ""), phrase) ? 5 : 0);
  return judged
    .filter(({ known }) => known === most)
    .sort((one, other) => rank(other) - rank(one))
    .map(({ descriptor }) => descriptor);
}
