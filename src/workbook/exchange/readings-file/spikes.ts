/** A reading further than this from the middle of its neighbours is a slip: a bubble on the float, a knock (our judgement, no source). */
const allowance = 0.008;
/** Neighbours on either side. */
const reach = 3;

/**
 * Places of readings that stand alone: far from the median of those around them, while these agree with one another.
 * A real fall, however steep, has its neighbours on its own line and is no spike; a rise that stays (sugar added) is none either.
 */
export function spikes(gravities: readonly number[]): ReadonlySet<number> {
  const found = new Set<number>();
  for (const [index, gravity] of gravities.entries()) {
    const before = gravities.slice(Math.max(0, index - reach), index);
    const after = gravities.slice(index + 1, index + 1 + reach);
    if (before.length === 0 || after.length === 0) continue;
    const [low, high] = [middle(before), middle(after)].sort((a, b) => a - b) as [number, number];
    if (high - low > 2 * allowance && before.length + after.length < 4) continue;
    if (gravity > high + allowance || gravity < low - allowance) found.add(index);
  }
  return found;
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
