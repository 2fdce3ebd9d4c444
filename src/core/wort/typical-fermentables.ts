import type { Fermentable } from "./fermentables";

/** What malts, extracts and sugars of a kind are like: lowest and highest of what is sold. The maltster's sheet of the sack comes first. */
export interface TypicalFermentable {
  readonly name: string;
  /** Words that a brewer may write for it; all of one group must stand in the name. */
  readonly knownBy: readonly (readonly string[])[];
  readonly handling: Fermentable["handling"];
  /** Grain that gives its sugar or its colour without a mash, too. */
  readonly steeps?: true;
  /** Extract, % of the mass as bought. */
  readonly yieldPercent: readonly [lowest: number, highest: number];
  readonly lovibond: readonly [lowest: number, highest: number];
}

type Range = readonly [number, number];
const mashed = (name: string, yieldPercent: Range, lovibond: Range, ...knownBy: readonly (readonly string[])[]): TypicalFermentable => ({
  name,
  knownBy,
  handling: "mash",
  yieldPercent,
  lovibond,
});
const soaked = (...all: Parameters<typeof mashed>): TypicalFermentable => ({ ...mashed(...all), steeps: true });
const dissolved =
  (handling: "extract" | "sugar") =>
  (...all: Parameters<typeof mashed>): TypicalFermentable => ({ ...mashed(...all), handling });
const extract = dissolved("extract");
const sugar = dissolved("sugar");

/**
 * Generic malts, extracts and sugars. Yields of grain: J. Palmer, How to Brew, ch. 12, its table of typical malt yields (25 to 39 points a
 * pound in a gallon, over the 46.2 of sucrose), and D. E. Briggs et al., Brewing: Science and Practice, 2004, ch. 2, both from memory, with two or three
 * per cent to either side. Colours: the same two, from memory. Dextrose is sold with a molecule of water: 180.16 / 198.17 is 91 %. Honey
 * holds at most 20 % of water (Codex Alimentarius, CXS 12-1981).
 */
export const typicalFermentables: readonly TypicalFermentable[] = [
  mashed("Pilsner malt", [79, 83], [1.4, 2], ["pils"], ["pilsner"], ["lager", "malt"]),
  mashed("Pale ale malt", [79, 83], [2.5, 3.5], ["pale", "ale", "malt"], ["pale", "malt"]),
  mashed("Wheat malt", [79, 84], [1.8, 3], ["wheat", "malt"]),
  mashed("Vienna malt", [76, 80], [3, 4.5], ["vienna"]),
  mashed("Munich malt", [75, 80], [6, 10], ["munich"]),
  mashed("Biscuit malt", [74, 78], [22, 30], ["biscuit"], ["amber", "malt"]),
  mashed("Brown malt", [68, 72], [55, 75], ["brown", "malt"]),
  soaked("Crystal malt, light", [73, 77], [10, 25], ["crystal", "light"], ["caramel", "light"]),
  soaked("Crystal malt, dark", [70, 74], [100, 130], ["crystal", "dark"], ["caramel", "dark"]),
  soaked("Crystal malt, medium", [72, 76], [45, 75], ["crystal"], ["caramel", "malt"]),
  soaked("Chocolate malt", [58, 68], [330, 430], ["chocolate"]),
  soaked("Black malt", [52, 62], [480, 560], ["black", "malt"]),
  soaked("Roasted barley", [52, 62], [400, 550], ["roast", "barley"]),
  mashed("Flaked barley", [67, 72], [1.5, 2.5], ["flaked", "barley"]),
  mashed("Flaked oats", [67, 72], [1, 2.5], ["oat"]),
  mashed("Flaked maize", [82, 87], [0.5, 1], ["maize"], ["flaked", "corn"]),
  extract("Pale malt extract, liquid", [76, 81], [3, 6], ["extract", "liquid", "pale"], ["extract", "liquid", "light"]),
  extract("Amber malt extract, liquid", [76, 81], [8, 13], ["extract", "liquid", "amber"]),
  extract("Dark malt extract, liquid", [76, 81], [17, 30], ["extract", "liquid", "dark"]),
  extract("Pale malt extract, dry", [90, 96], [3, 6], ["extract", "dry", "pale"], ["extract", "dry", "light"]),
  extract("Amber malt extract, dry", [90, 96], [8, 13], ["extract", "dry", "amber"]),
  extract("Dark malt extract, dry", [90, 96], [17, 30], ["extract", "dry", "dark"]),
  sugar("Table sugar", [100, 100], [0, 0], ["table", "sugar"], ["cane", "sugar"], ["sucrose"], ["white", "sugar"]),
  sugar("Dextrose", [90, 92], [0, 0], ["dextrose"], ["corn", "sugar"], ["glucose"]),
  sugar("Honey", [78, 83], [1, 8], ["honey"]),
];

/** What a brewer has written in, if its words tell which of them it is; the first that fits. */
export function typicalOf(ingredient: string): TypicalFermentable | undefined {
  const written = ingredient.toLowerCase();
  const isCalled = ({ name, knownBy }: TypicalFermentable): boolean =>
    name.toLowerCase() === written.trim() || knownBy.some((words) => words.every((word) => written.includes(word)));
  // An extract of wheat is no wheat malt, and a pale extract no pale malt.
  const wanted = written.includes("extract") ? (handling: string) => handling === "extract" : (handling: string) => handling !== "extract";
  return typicalFermentables.find((one) => wanted(one.handling) && isCalled(one));
}

/** The middle of a range, to the half. */
export const middle = ([lowest, highest]: Range): number => Math.round(lowest + highest) / 2;
