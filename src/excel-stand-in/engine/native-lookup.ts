import { compareValues, isErrorValue, type NativeValue } from "./native-values";
import { wildcards } from "./wildcards";

/**
 * Where a value stands in a list, from 0, as XLOOKUP and XMATCH look for it; undefined if nowhere.
 * @param match 0: the value itself, -1: or the next smaller, 1: or the next larger, 2: with wildcards
 * @param order 1: from the first, -1: from the last, 2 and -2: in a list that rises or falls
 */
export function searchIn(list: readonly NativeValue[], wanted: NativeValue, match: number, order: number): number | undefined {
  if (isErrorValue(wanted)) return undefined;
  const same = sameAs(wanted, match === 2);
  const forwards = order !== -1;
  const found = forwards ? list.findIndex(same) : list.findLastIndex(same);
  if (found >= 0) return found;
  if (match !== 1 && match !== -1) return undefined;
  let best: number | undefined;
  for (let step = 0; step < list.length; step++) {
    const at = forwards ? step : list.length - 1 - step;
    const side = compareValues(list[at]!, wanted);
    if (side === undefined || side * match <= 0) continue;
    if (best === undefined || compareValues(list[at]!, list[best]!)! * match < 0) best = at;
  }
  return best;
}

function sameAs(wanted: NativeValue, withWildcards: boolean): (value: NativeValue) => boolean {
  if (wanted === null) return (value) => value === null || value === "";
  if (withWildcards && typeof wanted === "string") {
    const pattern = wildcards(wanted);
    return (value) => typeof value === "string" && pattern.matches(value);
  }
  return (value) => compareValues(value, wanted) === 0;
}
