import { agedHops, writeAgedHops, type AgedHop } from "../../workbook/sheets/stores/aged-hops";
import {
  DrawRefused,
  giveBack,
  planDraw,
  readStoresAndBatches,
  writeDraws,
  type Shortage,
  type StoresAndBatches,
} from "../../workbook/sheets/stores/draw";
import { batchIdOf } from "../../workbook/batch/read/batch-sheets";
import { copies, markOf } from "../../workbook/batch/read/copied-sheets";
import type { UnpluggedBatch } from "../../workbook/batch/read/unplugged-batches";
import { shoppingList, writeShoppingList, type ShoppingLine } from "../../workbook/sheets/stores/shopping";
import { todayNumber } from "../parts/today-number";
import { failureWords } from "../../workbook/grid/words/host-words";

/** One batch sheet as the stores see it. */
export interface BatchAndStores {
  readonly sheetName: string;
  readonly drawn: boolean;
  /** Another sheet carries its mark too, so nobody can tell which of them has drawn. */
  readonly isCopied: boolean;
  readonly shortages: readonly Shortage[];
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
      readonly said?: string;
    }
  | { readonly kind: "failed"; readonly message: string };

function seen(found: StoresAndBatches, said?: string): StoresState {
  const twins = copies(found.batches.map(markOf));
  const copied = twins.flat();
  const batches = found.batches.map((batch): BatchAndStores => {
    const { sheetName } = batch;
    const drawn = !copied.includes(sheetName) && batchIdOf(batch) !== "" && found.stores.draws.some(({ id }) => id === batchIdOf(batch));
    const about = { sheetName, drawn, isCopied: copied.includes(sheetName), hops: agedHops(found.stores, batch) };
    if (drawn || copied.includes(sheetName)) return { ...about, shortages: [], refused: undefined };
    try {
      return { ...about, shortages: planDraw(found, sheetName).shortages, refused: undefined };
    } catch (problem) {
      if (problem instanceof DrawRefused) return { ...about, shortages: [], refused: problem.message };
      throw problem;
    }
  });
  return {
    kind: "there",
    sheetName: found.stores.sheetName,
    batches,
    copies: twins,
    unplugged: found.unplugged,
    ...(said !== undefined && { said }),
  };
}

const notSeen = "What the stores look like now could not be read: look again.";

/** Does something with the stores as they stand now, then looks again; whatever goes wrong is told in words. */
async function withStores(work?: (context: Excel.RequestContext, found: StoresAndBatches) => Promise<string>): Promise<StoresState> {
  try {
    return await Excel.run({ delayForCellEdit: true }, async (context) => {
      const found = await readStoresAndBatches(context);
      if (!found) return { kind: "none" } as const;
      if (!work) return seen(found);
      const said = await work(context, found);
      try {
        const after = await readStoresAndBatches(context);
        return after ? seen(after, said) : ({ kind: "none" } as const);
      } catch {
        // It is done all the same.
        return {
          kind: "there",
          sheetName: found.stores.sheetName,
          batches: [],
          copies: [],
          unplugged: [],
          said: `${said} ${notSeen}`,
        } as const;
      }
    });
  } catch (problem) {
    return { kind: "failed", message: failureWords("Nothing was changed.", problem) };
  }
}

export const lookAtStores = (): Promise<StoresState> => withStores();

export const drawFor = (sheetName: string): Promise<StoresState> =>
  withStores(async (context, found) => {
    const plan = planDraw(found, sheetName);
    await writeDraws(context, found, [{ plan, day: todayNumber() }]);
    return `“${sheetName}” has drawn ${plan.draws.length} ${plan.draws.length === 1 ? "thing" : "things"} from the stores.`;
  });

export const giveBackOf = (sheetName: string): Promise<StoresState> =>
  withStores(async (context, found) => {
    const batch = found.batches.find((one) => one.sheetName === sheetName);
    const lines = batch ? await giveBack(context, found, batchIdOf(batch)) : 0;
    return `${lines} ${lines === 1 ? "line" : "lines"} of “${sheetName}” went back on the shelves.`;
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
