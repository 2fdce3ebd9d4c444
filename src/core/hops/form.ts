/** What the hops are sold as. */
export const hopForms = ["whole", "pellets"] as const;
export type HopForm = (typeof hopForms)[number];

/**
 * What pellets give to boiling or standing wort beside whole hops, whose glands must first open: a tenth more (common
 * practice; R. Daniels, Designing Great Beers, 1996, takes a quarter, others nothing; from memory). The curves themselves
 * stand for whole hops.
 */
export const formFactors: Readonly<Record<HopForm, number>> = { whole: 1, pellets: 1.1 };
