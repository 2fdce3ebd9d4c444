/**
 * Why a formula of the core has no answer. The functions layer turns the reason into Excel's error value;
 * the core itself knows nothing of Excel.
 *
 * - "impossible": the inputs contradict each other or physics (final gravity above original gravity).
 * - "uncovered": the inputs lie outside what the cited source covers.
 * - "unsolvable": no finite answer exists (beer that must cool below the tap water).
 */
export type BrewingErrorReason = "impossible" | "uncovered" | "unsolvable";

/** An answer the core refuses to give, with the reason in a brewer's words. */
export class BrewingError extends Error {
  constructor(
    readonly reason: BrewingErrorReason,
    message: string,
  ) {
    super(message);
    this.name = "BrewingError";
  }
}
