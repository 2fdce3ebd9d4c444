/** One line of `npm run bench`: a target that we set ourselves, and what was measured. */
export interface BenchRow {
  readonly what: string;
  readonly target: string;
  measure: () => Promise<Measured> | Measured;
}

export interface Measured {
  readonly measured: string;
  /** Missing where it could not be measured here; `measured` says why. */
  readonly met?: boolean;
  /** The grid engine by itself takes so long that the target is out of reach, whatever we do; the figure stands in `measured`. */
  readonly beyondEngine?: boolean;
}
