/** The curves on offer for the share of alpha acid that ends up as bitterness. */
export const utilisationModels = ["tinseth", "rager"] as const;
export type UtilisationModel = (typeof utilisationModels)[number];

/**
 * Tinseth's utilisation, a fraction (G. Tinseth, 1995; also J. J. Palmer, How to Brew, Table 7): a gravity factor
 * 1.65 × 0.000125^(SG - 1) times a time factor that climbs towards 1 / 4.15. Measured with whole hops.
 *
 * @param minutes time in the boil, 0 or more; at 0 the answer is 0
 * @param gravity average gravity of the boiling wort, 1.0 to 1.2
 */
function tinseth(minutes: number, gravity: number): number {
  return (1.65 * 0.000125 ** (gravity - 1) * (1 - Math.exp(-0.04 * minutes))) / 4.15;
}

/**
 * Rager's utilisation, a fraction (J. Rager, Zymurgy, special issue 1990): the smooth curve through his table of
 * five-minute steps (the curve from memory, within 1 point of 100 of the table), less for wort above 1.050.
 * Hops that go in at 0 minutes still count 5 %, as in the first step of the table.
 */
function rager(minutes: number, gravity: number): number {
  const tabled = (18.11 + 13.86 * Math.tanh((minutes - 31.32) / 18.27)) / 100;
  return tabled / (1 + Math.max(0, (gravity - 1.05) / 0.2));
}

/** Share of the alpha acid that is found again as bitterness in the beer, 0 to about 0.4. */
export function hopUtilisation(minutes: number, gravity: number, model: UtilisationModel): number {
  return model === "rager" ? rager(minutes, gravity) : tinseth(minutes, gravity);
}
