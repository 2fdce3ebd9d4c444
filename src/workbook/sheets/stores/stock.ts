import type { UnitSystem } from "../../../functions/quantities";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import { needKey, type Need } from "./needs";
import { stockKinds, type StockKind } from "./stock-kinds";
import { storesMark } from "./stores-plan";

/** One line of a shelf, with what is left of it after all draws. */
export interface StockItem {
  readonly kind: StockKind;
  readonly name: string;
  readonly left: number;
  /** The cells of its row, from column A on. */
  readonly cells: readonly CellValue[];
}

/** One line in the book of what was drawn. */
export interface Draw extends Need {
  readonly id: string;
  readonly batch: string;
  readonly day: number;
}

export interface Stores {
  readonly sheetName: string;
  readonly units: UnitSystem;
  readonly items: readonly StockItem[];
  readonly draws: readonly Draw[];
}

export const isStoresSheet = (sheet: NamedCells): boolean => sheet.has(storesMark) && sheet.has("stores_draws");

export function readStores(sheet: NamedCells): Stores {
  const draws = sheet
    .block("stores_draws")
    .flatMap(([id = "", batch = "", day = 0, kind = "", name = "", amount = 0]): Draw[] =>
      id === ""
        ? []
        : [{ id: String(id), batch: String(batch), day: Number(day), kind: kind as StockKind, name: String(name), amount: Number(amount) }],
    );
  const drawn = new Map<string, number>();
  for (const draw of draws) drawn.set(needKey(draw), (drawn.get(needKey(draw)) ?? 0) + draw.amount);
  const items = stockKinds.flatMap(({ kind }) =>
    sheet.block(`stores_${kind}`).flatMap((cells): StockItem[] => {
      const name = String(cells[0]).trim();
      return name === "" ? [] : [{ kind, name, left: (Number(cells[1]) || 0) - (drawn.get(needKey({ kind, name })) ?? 0), cells }];
    }),
  );
  return { sheetName: sheet.sheetName, units: sheet.text("stores_units") === "us" ? "us" : "metric", items, draws };
}

/** The first line of caps, since a brewer uses one kind. */
export const capName = ({ items }: Stores): string | undefined =>
  items.find(({ kind, name }) => kind === "caps" && /\bcaps?\b/i.test(name))?.name;

export const itemFor = ({ items }: Stores, need: Pick<Need, "kind" | "name">): StockItem | undefined =>
  items.find((item) => needKey(item) === needKey(need));

/** Names that stand on two lines of one shelf: nobody can tell which of them a batch draws on. */
export function doubles({ items }: Stores): string[] {
  const seen = new Set<string>();
  return items.flatMap((item) => {
    if (seen.has(needKey(item))) return [item.name];
    seen.add(needKey(item));
    return [];
  });
}
