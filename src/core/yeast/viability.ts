/**
 * Share of the cells that is still alive each 30 days later: 0.80 for liquid yeast in the refrigerator, 0.98 for dry
 * yeast at room temperature, a fifth in a year (rules of thumb, from memory). Never falls to nothing.
 */
export const aliveAfter30Days = { liquid: 0.8, dry: 0.98 } as const;
export type YeastKind = keyof typeof aliveAfter30Days;
export const yeastKinds = Object.keys(aliveAfter30Days) as readonly YeastKind[];

/**
 * Share of the cells still alive, %, so many days after the pack was made (common practice, see above).
 *
 * @param days 0 or more; beyond two or three half-lives nobody should rely on it
 */
export function viabilityPercent(days: number, kind: YeastKind): number {
  return 100 * aliveAfter30Days[kind] ** (days / 30);
}
