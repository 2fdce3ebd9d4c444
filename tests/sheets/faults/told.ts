import type { StoresState } from "../../../src/pane/stores/stores-work";
import type { KitState } from "../../../src/pane/kit/kit-work";
import type { seasonState } from "../../../src/pane/season/follow-season";
import { inWorkbook, type Done } from "../../../src/pane/sheets/in-workbook";
import { readBatchSheet } from "../../../src/workbook/batch/read/batch-sheets";
import { carryOut, type Outcome } from "../../../src/workbook/brewing/companion/outcome";
import type { NamedCells } from "../../../src/workbook/grid/read/named-cells";
import type { Beginning } from "./beginnings";

type Work<T = unknown> = (context: Excel.RequestContext) => Promise<T>;

/** What the pane says at the end. */
export interface Told {
  readonly done: boolean;
  readonly words: string;
}

export interface Operation {
  readonly name: string;
  /** The workbook that it begins with; the same for several operations is made once. */
  readonly from: Beginning;
  /** Looked up once, in the workbook as it begins. */
  readonly ready?: () => Promise<unknown>;
  readonly act: (ready: never) => Promise<Told>;
  /** Of the places that words about something unsure may name, one is enough. */
  readonly places: readonly string[];
  /** Excel refuses it, faults or none. */
  readonly isRefused?: true;
  /** Enters no function that was not there, or says itself which of them Excel does not know even now. */
  readonly isForAnyExcel?: true;
  /** Refused where Excel has no notes for add-ins. */
  readonly needsNotes?: true;
  /** What the bench does in its own way. */
  readonly overlooks?: RegExp;
  /** Takes a second or more each time: few of its faults are drawn, in turn. */
  readonly isDear?: true;
}

export const toldDone = <T>(done: Done<T>): Told =>
  done.kind === "done" ? { done: true, words: "" } : { done: false, words: done.message };
export const toldOutcome = (outcome: Outcome): Told =>
  outcome.kind === "written" ? { done: true, words: "" } : { done: false, words: outcome.message };
export const toldState = (state: StoresState | KitState | ReturnType<typeof seasonState>): Told =>
  state.kind === "failed" ? { done: false, words: state.message } : { done: true, words: "" };

/** Work of a screen, which begins with these words where nothing came of it. */
export const working = (unchanged: string, work: Work) => async (): Promise<Told> => toldDone(await inWorkbook(unchanged, work));
export const inserting = (what: string, work: Work) => working(`The ${what} was not written, and the workbook is as it was.`, work);

export const read = (sheetName = "Batch 1"): Promise<NamedCells> =>
  Excel.run(async (context) => (await readBatchSheet(context, sheetName))!) as Promise<NamedCells>;

/** A change of the companion, made from the sheet as the brewer saw it. */
export const changing = (
  name: string,
  change: (context: Excel.RequestContext, seen: NamedCells) => Promise<unknown>,
  from: Beginning = "a batch",
): Operation => ({
  name,
  from,
  ready: () => read(),
  act: async (seen: NamedCells) => toldOutcome(await carryOut(async (context) => void (await change(context, seen)))),
  places: ["Batch 1"],
});
