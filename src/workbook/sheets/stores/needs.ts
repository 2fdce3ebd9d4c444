import type { BatchCell } from "../../batch/fields/cells";
import type { BatchSheet } from "../../batch/read/batch-sheets";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import { batchContents } from "../../batch/read/batch-contents";
import { shelfOf, type StockKind } from "./stock-kinds";

/** What one batch takes from the shelves, in the units of the stores. */
export interface Need {
  readonly kind: StockKind;
  readonly name: string;
  readonly amount: number;
}

/** The same thing under the same name counts once, whatever the case of its letters. */
export const needKey = ({ kind, name }: Pick<Need, "kind" | "name">): string => `${kind} ${name.trim().toLowerCase()}`;

/** Malt, hops, yeast, what a starter takes and, where it goes into bottles, caps (the name that the stores have for them). */
export function needsOf(sheet: BatchSheet, storesUnits: UnitSystem, capName: string | undefined): Need[] {
  const batch = batchContents(sheet);
  const inStores = (kind: StockKind, amount: number): number => {
    const { measure } = shelfOf(kind);
    return measure && batch.units !== storesUnits
      ? quantity(measure).fromCore(quantity(measure).toCore(amount, batch.units), storesUnits)
      : amount;
  };
  const number = (name: BatchCell): number => sheet.knownNumber(name) ?? 0;
  // Yeast that is grown in a starter first is bought for the starter alone, and so is its extract.
  const packs = number("starter_packs") || number("packs_to_pitch");
  const extract = sheet.knownText("starter_extract_name");
  // Of beer that is packaged in parts, the parts count, and nothing of section 8.
  const inParts = number("parts_total") > 0;
  const bottles = inParts ? number("parts_bottles") || number("parts_caps") : number("bottles_filled") || number("bottles_ready");
  const needs: Need[] = [
    ...batch.malt.map(({ ingredient, mass }) => ({ kind: "malt" as const, name: ingredient, amount: inStores("malt", mass) })),
    ...batch.hops.map(({ hop, mass }) => ({ kind: "hops" as const, name: hop, amount: inStores("hops", mass) })),
    { kind: "yeast", name: batch.yeast.name, amount: packs },
    { kind: "malt", name: extract, amount: inStores("malt", number("starter_extract")) },
    ...(capName !== undefined && (inParts || batch.packaging.into === "bottles")
      ? [{ kind: "caps" as const, name: capName, amount: bottles }]
      : []),
  ];
  return together(needs.filter(({ name, amount }) => name !== "" && amount > 0));
}

/** Lines of the same thing added up, in the order in which they first come. */
export function together(needs: readonly Need[]): Need[] {
  const sums = new Map<string, Need>();
  for (const need of needs) {
    const before = sums.get(needKey(need));
    sums.set(needKey(need), before ? { ...before, amount: before.amount + need.amount } : { ...need, name: need.name.trim() });
  }
  return [...sums.values()];
}
