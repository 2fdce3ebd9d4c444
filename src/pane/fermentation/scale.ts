/** Carries figures to pixels. */
export const scale =
  (from: readonly [number, number], to: readonly [number, number]) =>
  (value: number): number =>
    to[0] + ((value - from[0]) / (from[1] - from[0] || 1)) * (to[1] - to[0]);

/** About `count` round marks, at 1, 2 or 5 times a power of ten. */
export function roundMarks([low, high]: readonly [number, number], count: number): number[] {
  const rough = (high - low) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((factor) => factor * power >= rough * 0.999) ?? 10);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(12)));
}

/** The span of some figures with a little room around them. */
export function spanOf(values: readonly number[], room: number): readonly [number, number] {
  return [Math.min(...values) - room, Math.max(...values) + room];
}
