import { failureWords } from "../../workbook/grid/words/host-words";
import { followSheets } from "../../workbook/sheets/season/follow-sheets";
import { OlderSeason, refreshSeason, type SeasonReport, type YearChange } from "../../workbook/sheets/season/refresh-season";

/** What is known about the season sheet. */
export type SeasonState =
  | { readonly kind: "unknown" }
  | { readonly kind: "none" }
  | { readonly kind: "there"; readonly report: SeasonReport }
  /** Made by an older Gylebook: it is followed once it is written anew. */
  | { readonly kind: "older"; readonly message: string }
  | { readonly kind: "failed"; readonly message: string };

let state: SeasonState = { kind: "unknown" };
let listening = false;
let waiting: ReturnType<typeof setTimeout> | undefined;
let noting: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();

export const seasonState = (): SeasonState => state;

/** @returns how to stop being told */
export function onSeasonChange(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Brings the season sheet up to date now, and tells all who listen. */
export async function refreshNow(change?: YearChange): Promise<void> {
  clearTimeout(noting);
  state = await look(change);
  tell();
  if (!listening || state.kind !== "there" || state.report.written === 0) return;
  const { report } = state;
  noting = setTimeout(() => void note(report), pauseMs);
}

/**
 * Rows that are new have no figures to keep before they are calculated: they are kept a moment later, and what was said of the list
 * goes on standing there. Where that fails, the next look does it.
 */
async function note({ written, added, kept, dropped }: SeasonReport): Promise<void> {
  const after = await look();
  if (after.kind !== "there") return;
  state = { kind: "there", report: { ...after.report, written, added, kept, dropped } };
  tell();
}

const tell = (): void => {
  for (const listener of listeners) listener();
};

/**
 * While the pane is open the season sheet follows the tabs: once at the start, then whenever a sheet comes, goes, is
 * left, renamed or moved. Several changes in a row (a batch is written under a working name first) make one refresh.
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

let running: Promise<unknown> = Promise.resolve();

/** One after the other: two of them at once would be in each other's way, and the older one's answer might come last. */
function look(change?: YearChange): Promise<SeasonState> {
  const next = running.then(() => lookOnce(change));
  running = next;
  return next;
}

async function lookOnce(change?: YearChange): Promise<SeasonState> {
  try {
    const report = await Excel.run({ delayForCellEdit: true }, (context) => refreshSeason(context, change));
    return report ? { kind: "there", report } : { kind: "none" };
  } catch (problem) {
    if (problem instanceof OlderSeason) return { kind: "older", message: problem.message };
    return { kind: "failed", message: failureWords("The season sheet was not brought up to date, and stays as it was.", problem) };
  }
}
