/** "write 75 for 75 %": a cell formatted as a percentage hands over 0.75, which would pass for three quarters of one per cent. */
export function percentHint(typed: number): string | undefined {
  if (typed <= 0 || typed > 1) return undefined;
  const meant = percentOfShare(typed);
  return `write ${meant} for ${meant} %`;
}

export const percentOfShare = (share: number): number => Number((share * 100).toFixed(2));
