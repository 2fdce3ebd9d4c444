import { failureWords } from "../../workbook/grid/words/host-words";
import { followSheets } from "../../workbook/sheets/season/follow-sheets";
import { refreshSeason, type SeasonReport } from "../../workbook/sheets/season/refresh-season";

/** What is known about the season sheet. */
export type SeasonState =
  | { readonly kind: "unknown" }
  | { readonly kind: "none" }
  | { readonly kind: "there"; readonly report: SeasonReport }
  | { readonly kind: "failed"; readonly message: string };

let state: SeasonState = { kind: "unknown" };
let listening = false;
let waiting: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();

export const seasonState = (): SeasonState => state;

/** @returns how to stop being told */
export function onSeasonChange(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Brings the season sheet up to date now, and tells all who listen. */
export async function refreshNow(): Promise<void> {
  state = await look();
  for (const listener of listeners) listener();
}

/**
 * While the pane is open the season sheet follows the tabs: once at the start, then whenever a sheet comes, goes, is
 * renamed or moved. Several changes in a row (a batch is written under a working name first) make one refresh.
 */
export async function followSeason(): Promise<void> {
  if (listening) return;
  listening = true;
  // Somebody may be typing when the pane opens.
  await Excel.run({ delayForCellEdit: true }, (context) => followSheets(context, soon));
  await refreshNow();
}

const pauseMs = 400;

function soon(): void {
  clearTimeout(waiting);
  waiting = setTimeout(() => void refreshNow(), pauseMs);
}

async function look(): Promise<SeasonState> {
  try {
    const report = await Excel.run({ delayForCellEdit: true }, refreshSeason);
    return report ? { kind: "there", report } : { kind: "none" };
  } catch (problem) {
    return { kind: "failed", message: failureWords("The season sheet was not brought up to date, and stays as it was.", problem) };
  }
}
