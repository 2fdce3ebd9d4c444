import { BrewingError } from "../brewing-error";

/**
 * Share of the cells still alive, %, by what the maker says of the pack: so many per cent after so many days. A share that
 * dies each day the same, as `viabilityPercent` has it.
 *
 * @param alivePercent what the maker says is alive after `days`, above 0 to 100
 * @throws BrewingError "impossible" when the day asked about lies before the pack was made
 */
export function alivePercent(madeOn: number, today: number, makersPercent: number, days: number): number {
  const age = Math.floor(today) - Math.floor(madeOn);
  if (age < 0) throw new BrewingError("impossible", "today is before made_on: look at the dates");
  return 100 * (makersPercent / 100) ** (age / days);
}
