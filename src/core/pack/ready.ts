/** Days after bottling at which a first bottle is worth opening, at 21 °C (common practice, from memory). */
export const daysAt21 = 10;
/** However warm, a bottle gets a week (common practice: a first taste after one to two weeks). */
export const fewestDays = 7;

/** Temperatures for which the rule below is handed on, °C. */
export const conditioningRange = { from: 10, to: 30, by: "the rule for bottle conditioning" } as const;

/**
 * Whole days of bottle conditioning before the first bottle is chilled and tasted: ten at 21 °C, twice as many for
 * every 10 °C cooler, at least seven. Common practice, from memory; no source states it as a law.
 *
 * @param temperatureC where the bottles stand, 10 to 30
 */
export function conditioningDays(temperatureC: number): number {
  const days = daysAt21 * 2 ** ((21 - temperatureC) / 10);
  return Math.max(fewestDays, Math.ceil(days - 1e-9));
}
