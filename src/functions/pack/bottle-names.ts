/** What the trade also calls kinds of bottle: refused, with the word that is wanted. */
export const otherBottleNames = {
  beer: "ordinary",
  pet: "plastic",
  soda: "plastic",
  champagne: "sparkling",
  wine: "sparkling",
  refillable: "heavy",
} as const;
