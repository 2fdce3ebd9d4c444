import type { QuantityName } from "../../../functions/quantities";

export type StockKind = "malt" | "hops" | "yeast" | "caps";

/** The shelves of the stores, in the order of the sheet. */
export const stockKinds: readonly {
  readonly kind: StockKind;
  readonly title: string;
  readonly hint: string;
  readonly heading: string;
  readonly rows: number;
  readonly measure?: QuantityName;
}[] = [
  { kind: "malt", title: "Malt, extract, sugar", hint: "Keep it dry, cool and closed", heading: "Ingredient", rows: 14, measure: "mass" },
  {
    kind: "hops",
    title: "Hops",
    hint: "Alpha acid as printed on the packet, and when it was measured; it fades, the warmer the faster",
    heading: "Hop",
    rows: 12,
    measure: "smallMass",
  },
  { kind: "yeast", title: "Yeast", hint: "Packs; the maker's date comes first", heading: "Yeast", rows: 6 },
  {
    kind: "caps",
    title: "Caps and bottles",
    hint: "The first line with “cap” in its name is drawn on when a batch goes into bottles",
    heading: "What",
    rows: 4,
  },
];
