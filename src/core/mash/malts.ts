/**
 * What malts bring to the pH of a mash: the pH of each alone in distilled water, and how many milliequivalents move a
 * kilogram of it by one pH at room temperature. Rounded from published titrations of ground malt in distilled water
 * (A. J. deLange in J. Palmer and C. Kaminski, Water, 2013; K. Troester, The Effect of Brewing Water and Grist Composition
 * on the pH of the Mash, 2009), from memory. Malts of one kind differ by 0.1 in pH and by a fifth in buffering.
 */
interface MaltKind {
  /** pH in distilled water: at no colour, for each degree Lovibond, and no lower than. */
  readonly pH: readonly [none: number, perLovibond: number, lowest: number];
  readonly bufferMeqPerKg: number;
  /** °L taken where the colour is not known. */
  readonly usualLovibond: number;
}

export const malts = {
  /** Pilsner, pale, Vienna and Munich malt. */
  base: { pH: [5.8, -0.03, 5.4], bufferMeqPerKg: 45, usualLovibond: 2 },
  wheat: { pH: [6, 0, 6], bufferMeqPerKg: 45, usualLovibond: 2 },
  crystal: { pH: [5.25, -0.005, 4.6], bufferMeqPerKg: 50, usualLovibond: 60 },
  roasted: { pH: [4.65, 0, 4.65], bufferMeqPerKg: 40, usualLovibond: 500 },
  /** With 2 to 3 % of lactic acid: the line gives the 320 meq/kg that were titrated to pH 5.4. */
  acidulated: { pH: [3.45, 0, 3.45], bufferMeqPerKg: 165, usualLovibond: 2 },
} as const satisfies Record<string, MaltKind>;

export type MaltName = keyof typeof malts;
export const maltNames = Object.keys(malts) as readonly MaltName[];

/** Colours, °L, from which on a malt of no known kind counts as crystal, and as roasted malt (our judgement). */
export const darkerKinds = { crystal: 20, roasted: 150 } as const;

const kindByColour = (lovibond: number): MaltName =>
  lovibond >= darkerKinds.roasted ? "roasted" : lovibond >= darkerKinds.crystal ? "crystal" : "base";

export interface MashedMalt {
  readonly massKg: number;
  readonly pH: number;
  readonly bufferMeqPerKg: number;
}

/**
 * A malt as the balance of the mash wants it.
 *
 * @param said its kind, or its own measured pH in distilled water; left out, the kind goes by the colour
 * @param lovibond 0 where it is not known
 */
export function mashedMalt(massKg: number, said: MaltName | number | undefined, lovibond: number): MashedMalt {
  const kind: MaltKind = malts[typeof said === "string" ? said : kindByColour(lovibond)];
  const [none, perLovibond, lowest] = kind.pH;
  const usual = Math.max(lowest, none + perLovibond * (lovibond || kind.usualLovibond));
  return { massKg, pH: typeof said === "number" ? said : usual, bufferMeqPerKg: kind.bufferMeqPerKg };
}
