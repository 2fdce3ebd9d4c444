/** Where what stands on a shelf, by the number of columns from A on; of the first plan too, which knew no lots. */
export interface ShelfColumns {
  readonly name: number;
  readonly bought: number;
  readonly price: number;
  /** Of everything but hops. */
  readonly lot?: number;
  readonly dated?: number;
  readonly remark: number;
  readonly hop: {
    readonly lot: number;
    readonly measuredOn: number;
    readonly alphaPercent: number;
    readonly openedOn: number;
    readonly storedAt: number;
    readonly package: number;
  };
}

/** Marks the sheet, and tells which plan it follows. */
export const storesMark = "gylebook_stores";
export const storesVersion = 2;

export const shelfColumns = (version: number): ShelfColumns =>
  version < 2
    ? {
        name: 0,
        bought: 1,
        price: 4,
        remark: 5,
        hop: { lot: 5, alphaPercent: 6, measuredOn: 7, openedOn: 8, storedAt: 9, package: 10 },
      }
    : {
        name: 0,
        lot: 1,
        dated: 2,
        bought: 3,
        price: 7,
        remark: 8,
        hop: { lot: 1, measuredOn: 2, alphaPercent: 8, openedOn: 9, storedAt: 10, package: 11 },
      };

/** The book of what was drawn stands to the right and grows downwards: its columns in their order. */
export const bookColumns = {
  id: "S",
  batch: "T",
  day: "U",
  kind: "V",
  name: "W",
  lot: "X",
  amount: "Y",
  cost: "Z",
  key: "AA",
} as const;
export const bookFirstRow = 4;
export const bookLastRow = 3003;
