import { address, block as blockOf, localAddress, position } from "../plan/addresses";
import { freeName, refuseTaken } from "../insert-sheet";
import { newBatchId } from "../batch/batch-id";
import { isPrivate } from "../batch/private-words";
import { batchMark, unpluggedMark } from "../read/batch-sheets";
import { groupsOf, throughGroups, type LongWork } from "../progress";
import { withSecondLook } from "../second-look";
import { fingerprint } from "./fingerprint";
import { noteText } from "./kept-formula";
import { concerns, planUnplug, UnplugRefused, type CellChange } from "./plan-unplug";
import type { SheetSnapshot, TablePlace } from "./sheet-snapshot";

export interface UnplugChoices {
  /** Whether what things cost goes along. */
  readonly prices: boolean;
  /** For a workbook of its own: formulas that speak of sheets left behind become values. */
  readonly standalone: boolean;
  /** What a copy is to be called; without it, after its original. */
  readonly copyName?: string;
}

/** One sheet that was copied and unplugged. */
export interface UnpluggedSheet {
  readonly sheetName: string;
  readonly copyName: string;
  /** Formulas that calculate on without the add-in, and those that are values now, with the reason. */
  readonly plain: number;
  readonly values: readonly { readonly cell: string; readonly reason: string }[];
  readonly privateNotes: number;
  /** False in an Excel that knows no notes: then nothing says how to plug the copy in again. */
  readonly canPlugIn: boolean;
}

/** Named cells that tell what things cost; the batch sheet's own names. */
export const priceNames = ["malt_cost", "hop_cost", "yeast_cost", "cost_plan", "cost_each"];

/** Sheets for each three round trips. */
const sheetsAtOnce = 8;

/**
 * Copies sheets within the workbook and unplugs the copies: GYLE formulas become plain ones or values, each with a note
 * that keeps the formula; private notes, and prices if wished, stay behind. The sheets themselves are only read. All or
 * nothing: when something fails or is stopped, the copies made so far are deleted again. Three `context.sync()` for
 * eight sheets, after one that looks around.
 *
 * @throws UnplugRefused when a sheet is not there, or still calculating
 * @throws InsertionRefused when the name asked for the copy is taken
 */
export function unpluggedCopies(context: Excel.RequestContext, sheetNames: readonly string[], choices: UnplugChoices, work: LongWork = {}): Promise<UnpluggedSheet[]> {
  return withSecondLook(() => copyAll(context, sheetNames, choices, work));
}

async function copyAll(context: Excel.RequestContext, sheetNames: readonly string[], choices: UnplugChoices, work: LongWork): Promise<UnpluggedSheet[]> {
  const { worksheets, names } = context.workbook;
  worksheets.load("items/name");
  names.load("items/name,items/formula");
  await context.sync();
  const taken = worksheets.items.map(({ name }) => name);
  const missing = sheetNames.find((name) => !taken.includes(name));
  if (missing !== undefined) throw new UnplugRefused(`There is no sheet “${missing}” any more. Nothing was changed.`);
  const ofWorkbook = names.items.map(({ name, formula }) => [name, String(formula)] as const);
  const made: UnpluggedSheet[] = [];
  const begun: Pair[] = [];
  try {
    await throughGroups(groupsOf(sheetNames, () => 1, sheetsAtOnce), "sheet", work, async (group) => {
      const pairs = group.map((sheetName) => {
        if (choices.copyName !== undefined) refuseTaken(taken, choices.copyName);
        const copyName = choices.copyName ?? freeName(taken, copyNameOf(sheetName));
        taken.push(copyName);
        return { sheetName, copyName, workingName: `Gylebook copies ${newBatchId()}` };
      });
      begun.push(...pairs);
      made.push(...(await copyGroup(context, pairs, ofWorkbook, choices)));
    });
    return made;
  } catch (problem) {
    await takeBackCopies(context, begun);
    throw problem;
  }
}

/**
 * A copy is called by its working name for a moment, so one that is still called so was refused its own: a sheet of that
 * name is somebody else's then, and so are those of the copies after it.
 */
async function takeBackCopies(context: Excel.RequestContext, begun: readonly Pair[]): Promise<void> {
  const working = begun.map(({ workingName }) => context.workbook.worksheets.getItemOrNullObject(workingName));
  if (begun.length > 0) await context.sync();
  const refused = working.findIndex((sheet) => !sheet.isNullObject);
  const ours = refused === -1 ? begun : begun.slice(0, refused);
  await deleteSheets(context, [...ours.map(({ copyName }) => copyName), ...(refused === -1 ? [] : [begun[refused]!.workingName])]);
}

const copyNameOf = (sheetName: string): string => `${sheetName.slice(0, 31 - " unplugged".length)} unplugged`;

/** Deletes those of the sheets that are there. */
export async function deleteSheets(context: Excel.RequestContext, sheetNames: readonly string[]): Promise<void> {
  const sheets = sheetNames.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
  await context.sync();
  const there = sheets.filter((sheet) => !sheet.isNullObject);
  if (there.length === 0) return;
  for (const sheet of there) sheet.delete();
  await context.sync();
}

interface Pair {
  readonly sheetName: string;
  readonly copyName: string;
  /** Nobody else's, see `takeBackCopies`. */
  readonly workingName: string;
}

async function copyGroup(context: Excel.RequestContext, pairs: readonly Pair[], ofWorkbook: Named, choices: UnplugChoices): Promise<UnpluggedSheet[]> {
  const knowsNotes = Office.context.requirements.isSetSupported("ExcelApi", "1.18");
  const originals = pairs.map(({ sheetName }) => lookAt(context.workbook.worksheets.getItem(sheetName), knowsNotes));
  await context.sync();

  context.application.suspendApiCalculationUntilNextSync();
  const copies = pairs.map((pair, index) => copyAndLook(originals[index]!, pair, namesSeen(originals[index]!, ofWorkbook), choices));
  await context.sync();

  const plans = copies.map((copy, index) => ({ copy, changes: planUnplug(snapshotOf(pairs[index]!, originals[index]!, copy, ofWorkbook), choices.standalone) }));
  context.application.suspendApiCalculationUntilNextSync();
  const results = plans.map(({ copy, changes }, index) => write(copy, originals[index]!, changes, pairs[index]!, choices));
  await context.sync();
  return results;
}

interface Original {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
  readonly notes: Excel.NoteCollection | undefined;
}

function lookAt(sheet: Excel.Worksheet, knowsNotes: boolean): Original {
  const used = sheet.getUsedRange();
  used.load("address,formulas,values");
  sheet.names.load("items/name,items/formula");
  sheet.tables.load("items/name");
  sheet.protection.load("protected");
  const notes = knowsNotes ? sheet.notes : undefined;
  notes?.load("items/content");
  return { sheet, used, notes };
}

interface Copy {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
  readonly spills: readonly { readonly cell: string; readonly range: Excel.Range }[];
  readonly notePlaces: readonly { readonly range: Excel.Range; readonly content: string }[];
  readonly tables: readonly { readonly body: Excel.Range; readonly columns: Excel.TableColumnCollection }[];
}

function copyAndLook({ sheet: original, used, notes }: Original, { sheetName, copyName, workingName }: Pair, names: SheetSnapshot["names"], { standalone }: UnplugChoices): Copy {
  const sheet = original.copy("End");
  sheet.name = workingName;
  sheet.name = copyName;
  if (original.protection.protected) sheet.protection.unprotect();
  const copied = sheet.getUsedRange();
  copied.load("address,formulas");
  sheet.tables.load("items/name");
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  const spills = used.formulas.flatMap((row: unknown[], rowIndex) =>
    row.flatMap((formula, columnIndex) => {
      if (!concerns(formula, standalone, sheetName, names)) return [];
      const range = original.getCell(corner.row - 1 + rowIndex, corner.column - 1 + columnIndex).getSpillingToRangeOrNullObject();
      range.load("address");
      return [{ cell: address(corner.row + rowIndex, corner.column + columnIndex), range }];
    }),
  );
  const notePlaces = (notes?.items ?? []).map((note) => {
    const range = note.getLocation();
    range.load("address");
    return { range, content: note.content };
  });
  const tables = original.tables.items.map((table) => {
    const body = table.getDataBodyRange();
    body.load("address");
    table.columns.load("items/name");
    return { body, columns: table.columns };
  });
  return { sheet, used: copied, spills, notePlaces, tables };
}

type Named = readonly (readonly [string, string])[];

/** The names that the sheet's formulas can use, in lower case: the workbook's, and before them its own. */
function namesSeen({ sheet }: Original, ofWorkbook: Named): Map<string, string> {
  const own = sheet.names.items.map(({ name, formula }) => [name, String(formula)] as const);
  return new Map([...ofWorkbook, ...own].map(([name, formula]) => [name.toLowerCase(), formula.replace(/^=/, "")]));
}

function snapshotOf({ sheetName }: Pair, original: Original, copy: Copy, ofWorkbook: Named): SheetSnapshot {
  const { used } = original;
  // The copy's tables have names of their own, in the same order.
  const tables = copy.tables.flatMap(({ body, columns }, index): TablePlace[] => {
    const name = copy.sheet.tables.items[index]?.name;
    return name === undefined ? [] : [{ name, body: localAddress(body.address), columns: columns.items.map((column) => column.name) }];
  });
  return {
    name: sheetName,
    corner: position(localAddress(used.address).split(":")[0] ?? "A1"),
    formulas: copyFormulas(used, copy.used),
    values: used.values as unknown[][],
    names: namesSeen(original, ofWorkbook),
    tables,
    spills: new Map(copy.spills.filter(({ range }) => !range.isNullObject).map(({ cell, range }) => [cell, localAddress(range.address)])),
  };
}

/** The copy's own spelling of each formula, where both have the same cells in use; constants and spilled cells as in the original. */
function copyFormulas(original: Excel.Range, copied: Excel.Range): unknown[][] {
  const same = localAddress(original.address) === localAddress(copied.address);
  return (original.formulas as unknown[][]).map((row, rowIndex) =>
    row.map((formula, columnIndex) => (same && typeof formula === "string" && formula.startsWith("=") ? (copied.formulas[rowIndex]?.[columnIndex] as unknown) : formula)));
}

function write({ sheet, notePlaces }: Copy, original: Original, planned: readonly CellChange[], { sheetName, copyName }: Pair, { prices }: UnplugChoices): UnpluggedSheet {
  // A value that a formula leaves behind may be the private words of another cell, the clock's step for one.
  const changes = planned.map((change) => ({ ...change, contents: change.contents.map((row) => row.map((content) => (isPrivate(content) ? "" : content))) }));
  for (const { block, contents } of changes) sheet.getRange(block).formulas = contents;
  const names = new Map(original.sheet.names.items.map(({ name, formula }) => [name.toLowerCase(), localAddress(String(formula))]));
  if (!prices) for (const name of priceNames) if (names.has(name)) sheet.getRange(names.get(name)).clear("Contents");
  const mark = names.get(batchMark);
  if (mark !== undefined) {
    leavePrivateCells(sheet, original);
    sheet.names.getItem(batchMark).delete();
    sheet.names.add(unpluggedMark, sheet.getRange(mark));
  }
  const privateNotes = original.notes === undefined ? 0 : writeNotes(sheet, notePlaces, changes);
  return {
    sheetName,
    copyName,
    plain: changes.filter(({ reason }) => reason === undefined).length,
    values: changes.flatMap(({ cell, reason }) => (reason === undefined ? [] : [{ cell, reason }])),
    privateNotes,
    canPlugIn: original.notes !== undefined,
  };
}

/**
 * What a brewer typed into a batch sheet stays behind where it begins with "private", also as ="private …". Empty words
 * instead of clearing, which a cell that begins a merged one would refuse.
 */
function leavePrivateCells(sheet: Excel.Worksheet, { used }: Original): void {
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  for (const [row, cells] of (used.formulas as unknown[][]).entries()) {
    for (const [column, content] of cells.entries()) {
      if (isPrivate(content)) sheet.getRange(address(corner.row + row, corner.column + column)).values = [[""]];
    }
  }
}

/** Removes private notes and adds ours; a note of the brewer's own in such a cell is kept in it. Returns how many were private. */
function writeNotes(sheet: Excel.Worksheet, places: Copy["notePlaces"], changes: readonly CellChange[]): number {
  const existing = new Map(places.map(({ range, content }) => [localAddress(range.address).split(":")[0] ?? "", content]));
  let removed = 0;
  for (const [cell, content] of existing) {
    if (!isPrivate(content)) continue;
    sheet.notes.getItem(cell).delete();
    removed += 1;
  }
  for (const { cell, block, contents, formula, reason } of changes) {
    const before = existing.get(cell);
    const kept = before === undefined || isPrivate(before) ? undefined : before;
    const { from, to } = blockOf(block);
    const wholeBlock = `${address(from.row, from.column)}:${address(to.row, to.column)}`;
    const text = noteText({ block: wholeBlock, formula, marks: contents.flat().map(fingerprint), ...(kept === undefined ? {} : { note: kept }) }, reason);
    if (kept === undefined) sheet.notes.add(cell, text);
    else sheet.notes.getItem(cell).content = text;
  }
  return removed;
}

