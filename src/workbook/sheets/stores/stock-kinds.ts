import { quantity, type QuantityName, type UnitSystem } from "../../../functions/quantities";

export type StockKind = "malt" | "hops" | "yeast" | "caps";

export interface Shelf {
  readonly kind: StockKind;
  readonly title: string;
  readonly hint: string;
  readonly heading: string;
  /** Above the day by which the oldest lot is known. */
  readonly dated: string;
  readonly rows: number;
  readonly measure?: QuantityName;
  /** What is counted by the piece. */
  readonly pieces?: string;
}

/** The shelves of the stores, in the order of the sheet. */
export const stockKinds: readonly Shelf[] = [
  {
    kind: "malt",
    title: "Malt, extract, sugar",
    hint: "Keep it dry, cool and closed",
    heading: "Ingredient",
    dated: "Bought on",
    rows: 16,
    measure: "mass",
  },
  {
    kind: "hops",
    title: "Hops",
    hint: "Lot: the crop's year. Alpha acid as printed on the packet, and when it was measured; it fades, the warmer the faster",
    heading: "Hop",
    dated: "Measured on",
    rows: 14,
    measure: "smallMass",
  },
  { kind: "yeast", title: "Yeast", hint: "The maker's date comes first", heading: "Yeast", dated: "Best before", rows: 6, pieces: "packs" },
  {
    kind: "caps",
    title: "Caps and bottles",
    hint: "Lines with “cap” in their name are drawn on when a batch goes into bottles",
    heading: "What",
    dated: "Bought on",
    rows: 4,
    pieces: "pieces",
  },
];

export const shelfOf = (kind: StockKind): Shelf => stockKinds.find((shelf) => shelf.kind === kind)!;

/** "kg", "g", "packs": what an amount on this shelf is counted in. */
export function stockUnit(kind: StockKind, units: UnitSystem): string {
  const { measure, pieces = "" } = shelfOf(kind);
  return measure ? quantity(measure).unit[units] : pieces;
}

/** How much a price is for, in the unit of the shelf, and how its heading says so. */
export function pricedBy(kind: StockKind, units: UnitSystem): { readonly amount: number; readonly words: string } {
  if (kind === "hops" && units === "metric") return { amount: 100, words: "100 g" };
  return { amount: 1, words: shelfOf(kind).measure ? stockUnit(kind, units) : "each" };
}
