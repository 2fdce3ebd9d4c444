import type { UnitSystem } from "../../functions/quantities";
import { agedHops, writeAgedHops, type AgedHop } from "../../workbook/sheets/stores/aged-hops";
import {
  DrawRefused,
  giveBack,
  lotChoices,
  planDraw,
  readStoresAndBatches,
  writeDraws,
  type DrawPlan,
  type Shortage,
  type StoresAndBatches,
} from "../../workbook/sheets/stores/draw";
import { batchIdOf } from "../../workbook/batch/read/batch-sheets";
import { copies, markOf } from "../../workbook/batch/read/copied-sheets";
import type { UnpluggedBatch } from "../../workbook/batch/read/unplugged-batches";
import { shoppingList, writeShoppingList, type ShoppingLine } from "../../workbook/sheets/stores/shopping";
import { renewStores } from "../../workbook/sheets/stores/insert-stores";
import { needKey, needsOf } from "../../workbook/sheets/stores/needs";
import type { ChosenLots } from "../../workbook/sheets/stores/portions";
import { capName, homeless, lotKey, lotWords } from "../../workbook/sheets/stores/stock";
import { stockUnit } from "../../workbook/sheets/stores/stock-kinds";
import { storesVersion } from "../../workbook/sheets/stores/stores-columns";
import { todayNumber } from "../parts/today-number";
import { failureWords } from "../../workbook/grid/words/host-words";

/** A thing of which the stores have several lots. */
export interface LotChoice {
  readonly key: string;
  readonly name: string;
  readonly lots: readonly (readonly [key: string, words: string])[];
  readonly chosen: string | undefined;
}

/** Which lots the brewer wants drawn first, by sheet. */
export type ChosenOnSheets = ReadonlyMap<string, ChosenLots>;

/** One batch sheet as the stores see it. */
export interface BatchAndStores {
  readonly sheetName: string;
  readonly drawn: boolean;
  /** Another sheet carries its mark too, so nobody can tell which of them has drawn. */
  readonly isCopied: boolean;
  readonly shortages: readonly (Shortage & { readonly unit: string })[];
  readonly lots: readonly LotChoice[];
  /** Why it cannot draw, in words. */
  readonly refused: string | undefined;
  readonly hops: readonly AgedHop[];
}

export type StoresState =
  | { readonly kind: "looking" }
  | { readonly kind: "none" }
  | {
      readonly kind: "there";
      readonly sheetName: string;
      readonly batches: readonly BatchAndStores[];
      readonly copies: readonly (readonly string[])[];
      readonly unplugged: readonly UnpluggedBatch[];
      /** Made by an older Gylebook: it is to be written in today's layout first. */
      readonly isOlder: boolean;
      /** Lots in the book that no line of the shelves is. */
      readonly homeless: readonly string[];
      readonly said?: string;
    }
  | { readonly kind: "failed"; readonly message: string };

function seen(found: StoresAndBatches, chosen: ChosenOnSheets, said?: string): StoresState {
  const { stores } = found;
  const twins = copies(found.batches.map(markOf));
  const copied = twins.flat();
  const batches = found.batches.map((batch): BatchAndStores => {
    const { sheetName } = batch;
    const drawn = !copied.includes(sheetName) && batchIdOf(batch) !== "" && stores.draws.some(({ id }) => id === batchIdOf(batch));
    const wanted = chosen.get(sheetName) ?? new Map<string, string>();
    const about = {
      sheetName,
      drawn,
      isCopied: copied.includes(sheetName),
      hops: agedHops(stores, batch, wanted),
      lots: [],
      shortages: [],
    };
    if (drawn || copied.includes(sheetName)) return { ...about, refused: undefined };
    try {
      const shortages = planDraw(found, sheetName, wanted).shortages.map((one) => ({ ...one, unit: stockUnit(one.kind, stores.units) }));
      return { ...about, shortages, lots: lotsOf(found, batch, wanted), refused: undefined };
    } catch (problem) {
      if (problem instanceof DrawRefused) return { ...about, refused: problem.message };
      throw problem;
    }
  });
  return {
    kind: "there",
    sheetName: stores.sheetName,
    batches: stores.version < storesVersion ? [] : batches,
    copies: twins,
    unplugged: found.unplugged,
    isOlder: stores.version < storesVersion,
    homeless: homeless(stores).map(lotWords),
    ...(said !== undefined && { said }),
  };
}

const lotsOf = ({ stores }: StoresAndBatches, batch: StoresAndBatches["batches"][number], chosen: ChosenLots): LotChoice[] =>
  lotChoices(stores, needsOf(batch, stores.units, capName(stores))).map(({ need, lots }) => ({
    key: needKey(need),
    name: need.name,
    chosen: chosen.get(needKey(need)),
    lots: lots.map((lot) => [
      lotKey(lot),
      `${lot.lot === "" ? "without a lot" : `lot ${lot.lot}`}, ${Math.round(lot.left * 100) / 100} ${stockUnit(lot.kind, stores.units)} left`,
    ]),
  }));

const notSeen = "What the stores look like now could not be read: look again.";

/** Does something with the stores as they stand now, then looks again; whatever goes wrong is told in words. */
async function withStores(
  work?: (context: Excel.RequestContext, found: StoresAndBatches) => Promise<string>,
  chosen: ChosenOnSheets = new Map(),
): Promise<StoresState> {
  try {
    return await Excel.run({ delayForCellEdit: true }, async (context) => {
      const found = await readStoresAndBatches(context);
      if (!found) return { kind: "none" } as const;
      if (!work) return seen(found, chosen);
      const said = await work(context, found);
      try {
        const after = await readStoresAndBatches(context);
        return after ? seen(after, chosen, said) : ({ kind: "none" } as const);
      } catch {
        // It is done all the same.
        return {
          kind: "there",
          sheetName: found.stores.sheetName,
          batches: [],
          copies: [],
          unplugged: [],
          isOlder: false,
          homeless: [],
          said: `${said} ${notSeen}`,
        } as const;
      }
    });
  } catch (problem) {
    return { kind: "failed", message: failureWords("Nothing was changed.", problem) };
  }
}

export const lookAtStores = (chosen?: ChosenOnSheets): Promise<StoresState> => withStores(undefined, chosen);

export const drawFor = (sheetName: string, chosen?: ChosenOnSheets): Promise<StoresState> =>
  withStores(async (context, found) => {
    const plan = planDraw(found, sheetName, chosen?.get(sheetName));
    const own = await writeDraws(context, found, [{ plan, day: todayNumber() }]);
    const things = new Set(plan.draws.map(needKey)).size;
    if (things === 0) return `Nothing that “${sheetName}” needs is left on the shelves: it has drawn nothing.`;
    return `“${sheetName}” has drawn ${things} ${things === 1 ? "thing" : "things"} from the stores.${
      plan.draws.some(({ cost }) => cost !== undefined) ? " What they cost stands in its cost cells." : ""
    }${own > 0 ? ` ${own} ${own === 1 ? "cost" : "costs"} that stood there already ${own === 1 ? "stays" : "stay"}.` : ""}${stillShort(plan, found.stores.units)}`;
  }, chosen);

/** What no lot held: it is neither drawn nor paid, and that is said. */
function stillShort({ shortages }: DrawPlan, units: UnitSystem): string {
  if (shortages.length === 0) return "";
  const missing = shortages.map(({ name, kind, amount, left = 0 }) => {
    const short = Math.round((amount - Math.max(0, left)) * 100) / 100;
    return `${short} ${stockUnit(kind, units)} of ${name}`;
  });
  return ` Not there, so neither drawn nor in the costs: ${missing.join("; ")}. Once you have bought the rest, put it all back and draw again.`;
}

export const giveBackOf = (sheetName: string, chosen?: ChosenOnSheets): Promise<StoresState> =>
  withStores(async (context, found) => {
    const batch = found.batches.find((one) => one.sheetName === sheetName);
    const lines = batch ? await giveBack(context, found, batchIdOf(batch)) : 0;
    return `${lines} ${lines === 1 ? "line" : "lines"} of “${sheetName}” went back on the shelves.`;
  }, chosen);

/** An older stores sheet on a new one of today's layout; the older one stays. */
export const renew = (): Promise<StoresState> =>
  withStores(async (context, { stores }) => {
    const sheetName = await renewStores(context, "=TODAY()");
    return `“${sheetName}” holds the shelves and the book of “${stores.sheetName}” in today's layout. The older sheet is as it was; nothing draws on it any more, and you may delete it.`;
  });

export const writeAlphas = (sheetName: string, hops: readonly AgedHop[]): Promise<StoresState> =>
  withStores(async (context) => {
    await writeAgedHops(context, sheetName, hops);
    return `The hop table of “${sheetName}” now uses the alpha of the brewing day.`;
  });

export const writeList = (): Promise<StoresState> =>
  withStores(async (context, found) => {
    const lines = shoppingList(found);
    const over = await writeShoppingList(context, found, lines);
    return said(lines, over);
  });

function said(lines: readonly ShoppingLine[], over: number): string {
  if (lines.length === 0) return "Everything that the batches planned need is there.";
  return `${lines.length} ${lines.length === 1 ? "thing is" : "things are"} to be bought; the list stands on the stores sheet.${over > 0 ? ` It has no room for ${over} more: brew or draw for some batches first.` : ""}`;
}
