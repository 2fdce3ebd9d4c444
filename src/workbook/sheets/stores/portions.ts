import { needKey, type Need } from "./needs";
import { costOf, lotKey, lotsFor, type StockItem, type Stores } from "./stock";

/** Which lot the brewer wants drawn first, by `needKey` of the thing; left out: the oldest. */
export type ChosenLots = ReadonlyMap<string, string>;

/** So much of one lot. */
export interface Portion {
  readonly item: StockItem;
  readonly amount: number;
  readonly cost: number | undefined;
}

/**
 * The lots that a need is met from: the chosen one as far as it goes, then the oldest. What no lot holds any more is drawn from the
 * last of them, which then shows that it is short.
 */
export function portions(stores: Stores, need: Need, chosen: ChosenLots): readonly Portion[] {
  const wanted = chosen.get(needKey(need));
  const oldestFirst = lotsFor(stores, need);
  const first = oldestFirst.filter((item) => wanted !== undefined && lotKey(item) === wanted);
  const lots = [...first, ...oldestFirst.filter((item) => !first.includes(item))];
  const usable = lots.filter(({ left }) => left > 1e-9);
  const order = usable.length > 0 ? usable : lots.slice(0, 1);
  let open = need.amount;
  return order.flatMap((item, index) => {
    const amount = index === order.length - 1 ? open : Math.min(open, item.left);
    open -= amount;
    return amount > 0 ? [{ item, amount, cost: costOf(item, amount, stores.units) }] : [];
  });
}
