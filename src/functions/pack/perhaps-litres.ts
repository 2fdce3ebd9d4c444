/** A bottle of 0.5 is one in litres; one of 5 mL there is not. */
export const perhapsLitres = (typed: number): string | undefined =>
  typed <= 5 ? "bottles are given in mL or US fl oz: 500, not 0.5" : undefined;
