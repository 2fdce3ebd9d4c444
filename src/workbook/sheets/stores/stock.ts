import type { UnitSystem } from "../../../functions/quantities";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import { needKey, type Need } from "./needs";
import { pricedBy, stockKinds, type StockKind } from "./stock-kinds";
import { shelfColumns, storesMark, storesVersion } from "./stores-columns";

/** What the packet of a hop says, and how it is kept; "" where nothing is written. */
export interface HopOnShelf {
  readonly alphaPercent: CellValue;
  readonly measuredOn: CellValue;
  readonly openedOn: CellValue;
  readonly storedAt: CellValue;
  readonly package: CellValue;
}

/** One line of a shelf: one lot of one thing, with what is left of it after all draws. */
export interface StockItem {
  readonly kind: StockKind;
  readonly name: string;
  /** What tells it from other lots of the same name, such as the crop's year; "" where there is no need to. */
  readonly lot: string;
  /** Day number by which the oldest lot is known. */
  readonly dated: number | undefined;
  readonly bought: number;
  readonly left: number;
  /** As it is written: for as much as `pricedBy` says. */
  readonly price: CellValue;
  readonly remark: CellContent;
  readonly hop?: HopOnShelf;
}

/** One line in the book of what was drawn. */
export interface Draw extends Need {
  readonly id: string;
  readonly batch: string;
  readonly day: number;
  readonly lot: string;
  /** What it had cost; undefined where its lot has no price. */
  readonly cost: number | undefined;
}

export interface Stores {
  readonly sheetName: string;
  readonly units: UnitSystem;
  /** Of the sheet's plan. */
  readonly version: number;
  readonly items: readonly StockItem[];
  readonly draws: readonly Draw[];
}

export const isStoresSheet = (sheet: NamedCells): boolean => sheet.has(storesMark) && sheet.has("stores_draws");

const versionOf = (sheet: NamedCells): number => Number(sheet.value(storesMark)) || 1;

/** The stores sheet of a workbook: the newest plan's, where an older one was left standing beside it. */
export const storesSheetOf = (sheets: readonly NamedCells[]): NamedCells | undefined =>
  sheets.filter(isStoresSheet).sort((one, other) => versionOf(other) - versionOf(one))[0];

/** The same lot of the same thing, however its letters are written; the sheet writes the same key into its workings. */
export function lotKey({ kind, name, lot }: { readonly kind: StockKind; readonly name: string; readonly lot: string }): string {
  const plain = (text: string): string => text.trim().replace(/ +/g, " ").toLowerCase();
  return `${kind}/${plain(name)}/${plain(lot)}`;
}

export function readStores(sheet: NamedCells): Stores {
  const version = versionOf(sheet);
  const units = sheet.text("stores_units") === "us" ? "us" : "metric";
  const shelves = stockKinds.flatMap(({ kind }) => shelfLines(sheet, kind, version));
  const draws = version < storesVersion ? drawsWithoutLots(sheet, shelves, units) : drawsInBook(sheet);
  const drawn = new Map<string, number>();
  for (const draw of draws) drawn.set(lotKey(draw), (drawn.get(lotKey(draw)) ?? 0) + draw.amount);
  const items = shelves.map((item) => ({ ...item, left: item.bought - (drawn.get(lotKey(item)) ?? 0) }));
  return { sheetName: sheet.sheetName, units, version, items, draws };
}

function shelfLines(sheet: NamedCells, kind: StockKind, version: number): StockItem[] {
  const { name, bought, price, remark, hop, ...all } = shelfColumns(version);
  const [lot, dated] = kind === "hops" ? [hop.lot, hop.measuredOn] : [all.lot, all.dated];
  return sheet.block(`stores_${kind}`).flatMap((cells): StockItem[] => {
    const at = (column: number | undefined): CellValue => (column === undefined ? "" : (cells[column] ?? ""));
    const called = String(at(name)).trim();
    if (called === "") return [];
    const day = at(dated);
    return [
      {
        kind,
        name: called,
        lot: String(at(lot)).trim(),
        dated: typeof day === "number" && day > 0 ? day : undefined,
        bought: Number(at(bought)) || 0,
        left: 0,
        price: at(price),
        remark: kind === "hops" ? "" : String(at(remark)),
        ...(kind === "hops" && {
          hop: {
            alphaPercent: at(hop.alphaPercent),
            measuredOn: at(hop.measuredOn),
            openedOn: at(hop.openedOn),
            storedAt: at(hop.storedAt),
            package: at(hop.package),
          },
        }),
      },
    ];
  });
}

function drawsInBook(sheet: NamedCells): Draw[] {
  return sheet
    .block("stores_draws")
    .flatMap(([id = "", batch = "", day = 0, kind = "", name = "", lot = "", amount = 0, cost = ""]): Draw[] =>
      id === ""
        ? []
        : [
            {
              id: String(id),
              batch: String(batch),
              day: Number(day),
              kind: kind as StockKind,
              name: String(name),
              lot: String(lot),
              amount: Number(amount),
              cost: typeof cost === "number" ? cost : undefined,
            },
          ],
    );
}

/** The first plan's book knew names alone, which stood apart then: each had one line, and its price. */
function drawsWithoutLots(sheet: NamedCells, shelves: readonly StockItem[], units: UnitSystem): Draw[] {
  return sheet.block("stores_draws").flatMap(([id = "", batch = "", day = 0, kind = "", name = "", amount = 0]): Draw[] => {
    if (id === "") return [];
    const need = { kind: kind as StockKind, name: String(name), amount: Number(amount) };
    const item = shelves.find((one) => needKey(one) === needKey(need));
    return [
      {
        ...need,
        id: String(id),
        batch: String(batch),
        day: Number(day),
        lot: item?.lot ?? "",
        cost: item && costOf(item, need.amount, units),
      },
    ];
  });
}

/** What so much of a lot had cost; undefined where it has no price. */
export function costOf({ kind, price }: Pick<StockItem, "kind" | "price">, amount: number, units: UnitSystem): number | undefined {
  return typeof price === "number" ? (amount * price) / pricedBy(kind, units).amount : undefined;
}

/** The first line of caps, since a brewer uses one kind. */
export const capName = ({ items }: Stores): string | undefined =>
  items.find(({ kind, name }) => kind === "caps" && /\bcaps?\b/i.test(name))?.name;

/**
 * The lots from which a need can be met, the oldest first; lots without a day come last, in the order of the sheet. A batch that
 * names the lot itself ("Cascade 2025") gets that one.
 */
export function lotsFor({ items }: Stores, need: Pick<Need, "kind" | "name">): readonly StockItem[] {
  const called = items.filter((item) => needKey(item) === needKey(need));
  const found =
    called.length > 0 ? called : items.filter((item) => needKey({ ...item, name: `${item.name} ${item.lot}` }) === needKey(need));
  return [...found].sort((one, other) => (one.dated ?? Infinity) - (other.dated ?? Infinity) || 0);
}

/** What all lots of it have left; undefined where no shelf has it. */
export function leftFor(stores: Stores, need: Pick<Need, "kind" | "name">): number | undefined {
  const lots = lotsFor(stores, need);
  return lots.length === 0 ? undefined : lots.reduce((sum, { left }) => sum + left, 0);
}

/** Lines of one shelf with the same name and the same lot: nobody can tell which of them a batch draws on. */
export function doubles({ items }: Stores): StockItem[] {
  const seen = new Set<string>();
  return items.filter((item) => {
    const isDouble = seen.has(lotKey(item));
    seen.add(lotKey(item));
    return isDouble;
  });
}

/** Draws from a lot that no line of the shelves is any more: it was renamed, or its line was deleted. */
export function homeless({ items, draws }: Stores): Draw[] {
  const there = new Set(items.map(lotKey));
  return [...new Map(draws.filter((draw) => !there.has(lotKey(draw))).map((draw) => [lotKey(draw), draw])).values()];
}

/** "Cascade, lot 2025" */
export const lotWords = ({ name, lot }: Pick<StockItem, "name" | "lot">): string => (lot === "" ? name : `${name}, lot ${lot}`);
