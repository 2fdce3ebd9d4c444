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

/** Every lot of it, the chosen one before the oldest. */
export function lotsInOrder(stores: Stores, need: Pick<Need, "kind" | "name">, chosen: ChosenLots): readonly StockItem[] {
  const wanted = chosen.get(needKey(need));
  const oldestFirst = lotsFor(stores, need);
  const first = oldestFirst.filter((item) => wanted !== undefined && lotKey(item) === wanted);
  return [...first, ...oldestFirst.filter((item) => !first.includes(item))];
}

/** The lots that a need is met from, each as far as it goes: what they do not hold is short, and nobody draws or pays it. */
export function portions(stores: Stores, need: Need, chosen: ChosenLots): readonly Portion[] {
  let open = need.amount;
  return lotsInOrder(stores, need, chosen).flatMap((item) => {
    const amount = Math.min(open, item.left);
    if (amount <= 1e-9) return [];
    open -= amount;
    return [{ item, amount, cost: costOf(item, amount, stores.units) }];
  });
}
