/**
 * What a row of a reference table rests on, and what it proves. Only the first counts as independent of the code.
 */
export const bases = {
  document: "the number was read in the source named, and the code was not made from it",
  "fitted to": "read in the source named, but our coefficients were fitted to these very numbers: the row tests the fit, not the table",
  copied: "read in the source named, and packed into our table by the same script as the row: the row tests the packing",
  reversed: "a pair of numbers that another function's row holds already, the other way round",
  memory: "from the writer's memory",
  computed: "from the equation, so it guards against slips only",
  "common practice": "trade knowledge without a source",
} as const;

export type Basis = keyof typeof bases;
export const basisNames = Object.keys(bases) as readonly Basis[];
