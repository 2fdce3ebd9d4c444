import { canPlugInAgain } from "./can-plug-in";
import { loadOwnNames, ownNames } from "../../grid/read/own-names";
import { block as blockOf, localAddress, position } from "../../grid/plan/addresses";
import { batchMark, unpluggedMark } from "../../batch/read/batch-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { ToldInFull } from "../../grid/words/told-in-full";
import { askFunctions, needFunctions } from "../../grid/write/known-functions";
import { isAsTyped } from "../../grid/write/same-content";
import { writeSurely, type Standing } from "../../grid/write/write-surely";
import { sheetKind } from "../../batch/sheet/card";
import { stillLineName, stillName } from "./kept-formula";
import { changedCell, keptOnSheet, type KeptOnSheet } from "./kept-on-sheet";
import { sheetsSpokenOf } from "./plan-unplug";
import { cellAt } from "./sheet-snapshot";

/** A cell that cannot simply get its GYLE formula back. */
export interface Conflict {
  readonly cell: string;
  readonly why: "typed over" | "moved" | "speaks of a sheet that is not here";
}

/** A sheet that was not plugged in; nothing was changed. */
export class PlugInRefused extends ToldInFull {
  override readonly name = "PlugInRefused";
  constructor(
    message: string,
    readonly conflicts: readonly Conflict[] = [],
  ) {
    super(message);
  }
}

export interface PluggedIn {
  readonly restored: number;
  /** Cells that were left as they are, with their notes. */
  readonly left: readonly Conflict[];
}

/**
 * Puts the GYLE formulas of an unplugged sheet back: each formula's text and its spill as they were. Where somebody has
 * typed over what was written, or rows have moved, it refuses and names the cells; told to leave them, it restores the
 * others. Three `context.sync()`, and one to clear away what the plain formulas rested on; what the third has begun is taken back when it fails.
 *
 * @throws PlugInRefused when there is nothing to restore, or a cell was changed and is not to be left
 */
export function plugIn(context: Excel.RequestContext, sheetName: string, { leaveChanged }: { leaveChanged: boolean }): Promise<PluggedIn> {
  return withSecondLook(() => lookAndPlugIn(context, sheetName, leaveChanged));
}

async function lookAndPlugIn(context: Excel.RequestContext, sheetName: string, leaveChanged: boolean): Promise<PluggedIn> {
  if (!canPlugInAgain()) throw new PlugInRefused("This Excel cannot read notes, which keep the formulas. Nothing was changed.");
  const sheet = context.workbook.worksheets.getItem(sheetName);
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  loadOwnNames(sheet);
  const { notes } = sheet;
  notes.load("items/content");
  const used = sheet.getUsedRange();
  used.load("address,formulas");
  await context.sync();

  const asked = keptOnSheet(notes);
  await context.sync();

  const found = asked();
  if (found.length === 0)
    throw new PlugInRefused(`“${sheetName}” has no formulas to plug in: no note on it keeps one. Nothing was changed.`);
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  const contentAt = (row: number, column: number): unknown => cellAt(used.formulas as unknown[][], corner, row, column);
  const names = sheets.items.map(({ name }) => name.toLowerCase());
  const conflicts = found.flatMap((kept) => conflictOf(kept, contentAt, names));
  const changed = conflicts.filter(({ why }) => why !== "speaks of a sheet that is not here");
  if (changed.length > 0 && !leaveChanged) throw new PlugInRefused(refusal(sheetName, changed), changed);
  const stopped = new Set(conflicts.map(({ anchor }) => anchor));
  const restored = found.filter(({ cell }) => !stopped.has(cell));
  if (restored.length === 0)
    throw new PlugInRefused(`No formula on “${sheetName}” can be plugged in: ${conflictWords(conflicts)}. Nothing was changed.`, conflicts);
  const left = found.filter(({ cell }) => stopped.has(cell));
  await restore(context, sheet, sheetName, restored, restOf(sheet, restored, left), contentAt);
  return { restored: restored.length, left: conflicts };
}

type AnchoredConflict = Conflict & { readonly anchor: string };

/** At most one for each formula: the first of its cells that is not as it was written. */
function conflictOf(
  kept: KeptOnSheet,
  contentAt: (row: number, column: number) => unknown,
  sheetNames: readonly string[],
): AnchoredConflict[] {
  const anchor = kept.cell;
  const changed = changedCell(kept, contentAt);
  if (changed) return [{ anchor, ...changed }];
  return sheetsSpokenOf(kept.formula).every((name) => sheetNames.includes(name.toLowerCase()))
    ? []
    : [{ anchor, cell: anchor, why: "speaks of a sheet that is not here" }];
}

const conflictWords = (conflicts: readonly Conflict[]): string => {
  const shown = conflicts
    .slice(0, 8)
    .map(
      ({ cell, why }) =>
        `${cell} ${why === "typed over" ? "was typed over" : why === "moved" ? "is no longer where it was" : "speaks of a sheet that is not here"}`,
    );
  return shown.join(", ") + (conflicts.length > shown.length ? ` and ${conflicts.length - shown.length} more` : "");
};

const refusal = (sheetName: string, changed: readonly Conflict[]): string =>
  `“${sheetName}” was changed since it was unplugged: ${conflictWords(changed)}. Plugging in would lose that. Nothing was changed.`;

/** Named cells that were written beside the formulas, and are wanted no longer: name and "K210:S240". */
interface Rest {
  readonly name: string;
  readonly range: string;
}

/** What no formula that is left rests on; the comparison goes when nothing stands still any more. */
function restOf(sheet: Excel.Worksheet, restored: readonly KeptOnSheet[], left: readonly KeptOnSheet[]): Rest[] {
  const wanted = new Set(left.flatMap(({ workings = [] }) => workings));
  const over = restored.flatMap(({ workings = [] }) => workings).filter((name) => !wanted.has(name));
  const names = new Set([...over, ...(left.some(({ still }) => still === true) ? [] : [stillName, stillLineName])]);
  return ownNames(sheet).flatMap(({ name, formula }) =>
    names.has(name.toLowerCase()) ? [{ name, range: localAddress(String(formula)) }] : [],
  );
}

function clearRest(sheet: Excel.Worksheet, rest: readonly Rest[]): void {
  for (const { name, range } of rest) {
    const cells = sheet.getRange(range);
    if (name.toLowerCase() === stillLineName) {
      cells.values = [[sheetKind]];
      cells.format.wrapText = false;
      cells.conditionalFormats.clearAll();
    } else cells.clear();
    sheet.names.getItem(name).delete();
  }
}

async function restore(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  sheetName: string,
  restored: readonly KeptOnSheet[],
  rest: readonly Rest[],
  contentAt: (row: number, column: number) => unknown,
): Promise<void> {
  const mark = ownNames(sheet).find(({ name }) => name.toLowerCase() === unpluggedMark);
  const known = restored.find(({ formula }) => needFunctions([formula]));
  await writeSurely({
    place: `“${sheetName}”`,
    write: async () => {
      const refuseUnknown = known && askFunctions(sheet.getRange(known.cell));
      context.application.suspendApiCalculationUntilNextSync();
      for (const { cell, block, formula } of restored) {
        sheet.getRange(block).clear("Contents");
        sheet.getRange(cell).formulas = [[formula]];
      }
      for (const { cell, note } of restored) {
        if (note === undefined) sheet.notes.getItem(cell).delete();
        else sheet.notes.getItem(cell).content = note;
      }
      if (mark) {
        sheet.names.add(batchMark, sheet.getRange(localAddress(String(mark.formula))));
        mark.delete();
      }
      await context.sync();
      refuseUnknown?.();
    },
    look: () => standingOf(context, sheet, restored),
    takeBack: () => takeBack(context, sheet, restored, contentAt),
  });
  if (rest.length > 0) await clearAway(context, sheet, sheetName, rest);
}

/** What the plain formulas rested on goes when nothing rests on it any more: that may be done twice, and is never taken back. */
function clearAway(context: Excel.RequestContext, sheet: Excel.Worksheet, sheetName: string, rest: readonly Rest[]): Promise<void> {
  const clear = async (some: readonly Rest[]): Promise<void> => {
    clearRest(sheet, some);
    await context.sync();
  };
  return writeSurely({
    place: `“${sheetName}”`,
    write: () => clear(rest),
    look: async () => {
      const names = rest.map(({ name }) => sheet.names.getItemOrNullObject(name));
      await context.sync();
      await clear(rest.filter((_, index) => names[index]?.isNullObject === false));
      return "everything";
    },
    // Never asked for: what is half cleared is cleared on.
    takeBack: () => Promise.resolve(),
  });
}

/** The marks change places last, so a sheet that still has the old one has not got everything. */
async function standingOf(context: Excel.RequestContext, sheet: Excel.Worksheet, restored: readonly KeptOnSheet[]): Promise<Standing> {
  const cells = restored.map(({ cell }) => sheet.getRange(cell).load("formulas"));
  const notes = restored.map(({ cell }) => sheet.notes.getItemOrNullObject(cell).load("content"));
  const old = sheet.names.getItemOrNullObject(unpluggedMark);
  await context.sync();
  const isRestored = restored.every(
    ({ formula, note }, index) =>
      isAsTyped(formula, cells[index]?.formulas[0]?.[0] as string) &&
      (note === undefined ? notes[index]!.isNullObject : notes[index]!.content === note),
  );
  return isRestored && old.isNullObject ? "everything" : "half";
}

/** Excel carries out what stands before the failing step: the cells get back what they held, and notes that went come again. */
async function takeBack(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  restored: readonly KeptOnSheet[],
  contentAt: (row: number, column: number) => unknown,
): Promise<void> {
  const notes = restored.map(({ cell }) => sheet.notes.getItemOrNullObject(cell));
  const marks = [batchMark, unpluggedMark].map((name) => sheet.names.getItemOrNullObject(name));
  await context.sync();
  const asItWas = (block: string): unknown[][] => {
    const { from, to } = blockOf(block);
    return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
      Array.from({ length: to.column - from.column + 1 }, (__, column) => contentAt(from.row + row, from.column + column)),
    );
  };
  for (const [index, { cell, block, text }] of restored.entries()) {
    sheet.getRange(block).formulas = asItWas(block);
    const note = notes[index];
    if (note?.isNullObject === true) sheet.notes.add(cell, text);
    else if (note) note.content = text;
  }
  const [plugged, unplugged] = marks;
  if (plugged && unplugged && !plugged.isNullObject && unplugged.isNullObject) {
    sheet.names.add(unpluggedMark, plugged.getRange());
    plugged.delete();
  }
  await context.sync();
}
