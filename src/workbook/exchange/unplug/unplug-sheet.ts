import { canPlugInAgain } from "./can-plug-in";
import { freeName, refuseTaken } from "../../grid/write/insert-sheet";
import { dayNumberOf, isoDay } from "../../grid/words/day-number";
import { hostWords } from "../../grid/words/host-words";
import { shortened } from "../../grid/words/shortened";
import { Unsure } from "../../grid/words/told-in-full";
import { twice, writeSurely } from "../../grid/write/write-surely";
import { askMark, newMark, takeMark } from "../../grid/write/writing-mark";
import { groupsOf, throughGroups, type LongWork } from "../../grid/write/progress";
import { withSecondLook } from "../../grid/read/second-look";
import { copyAndLook, lookAt, namesSeen, snapshotOf, type Named, type Pair } from "./look-at-copy";
import { planUnplug, UnplugRefused } from "./plan-unplug";
import type { UnplugChoices, UnpluggedSheet } from "./unplugged-sheet";
import { writeCopy } from "./write-copy";

/** Sheets for each three round trips. */
const sheetsAtOnce = 8;

/**
 * Copies sheets within the workbook and unplugs the copies: GYLE formulas become plain ones or values, each with a note
 * that keeps the formula; private notes, and prices if wanted, stay behind. The sheets themselves are only read. All or
 * nothing: when something fails or is stopped, the copies made so far are deleted again. Three `context.sync()` for
 * eight sheets, after one that looks around; one more at the end takes the marks off.
 *
 * @throws UnplugRefused when a sheet is not there, or still calculating
 * @throws InsertionRefused when the name asked for the copy is taken
 */
export function unpluggedCopies(
  context: Excel.RequestContext,
  sheetNames: readonly string[],
  choices: UnplugChoices,
  work: LongWork = {},
): Promise<UnpluggedSheet[]> {
  return withSecondLook(() => copyAll(context, sheetNames, choices, work));
}

async function copyAll(
  context: Excel.RequestContext,
  sheetNames: readonly string[],
  choices: UnplugChoices,
  work: LongWork,
): Promise<UnpluggedSheet[]> {
  const { worksheets, names } = context.workbook;
  worksheets.load("items/name,items/id");
  names.load("items/name,items/formula");
  await context.sync();
  const taken = worksheets.items.map(({ name }) => name);
  const before = worksheets.items.map(({ id }) => id);
  const missing = sheetNames.find((name) => !taken.includes(name));
  if (missing !== undefined) throw new UnplugRefused(`There is no sheet “${missing}” any more. Nothing was changed.`);
  const ofWorkbook = names.items.map(({ name, formula }) => [name, String(formula)] as const);
  const pairs = sheetNames.map((sheetName): Pair => {
    if (choices.copyName !== undefined) refuseTaken(taken, choices.copyName);
    const copyName = choices.copyName ?? freeName(taken, copyNameOf(sheetName));
    taken.push(copyName);
    return { sheetName, copyName };
  });
  const made: UnpluggedSheet[] = [];
  const mark = newMark();
  let group: readonly Pair[] = [];
  const ours = () => copiesOf(context, before, mark, group);
  await writeSurely({
    place: pairs.map(({ copyName }) => `“${copyName}”`).join(", "),
    write: async () => {
      await throughGroups(
        groupsOf(pairs, () => 1, sheetsAtOnce),
        "sheet",
        work,
        async (next) => {
          group = next;
          made.push(...(await copyGroup(context, group, ofWorkbook, choices, mark)));
        },
      );
      if (choices.stays !== undefined) return;
      for (const { copyName } of pairs) takeMark(worksheets.getItem(copyName));
      await context.sync();
    },
    look: async () => {
      const { marked, bare } = await ours();
      if (made.length < pairs.length || choices.stays !== undefined) return marked.length + bare.length === 0 ? "nothing" : "half";
      // All copies are made: what is left to do is done once more.
      for (const sheet of marked) takeMark(sheet);
      await context.sync();
      return "everything";
    },
    takeBack: async () => {
      const { marked, bare } = await ours();
      for (const sheet of [...marked, ...bare]) sheet.delete();
      await context.sync();
    },
  });
  return made;
}

/**
 * Copies that were begun, among the sheets that have come since the look: they carry our mark, or the original's, or they have got
 * none yet and are in every formula what the original is, so that nothing of anybody's would be lost with them.
 */
async function copiesOf(
  context: Excel.RequestContext,
  before: readonly string[],
  mark: string,
  group: readonly Pair[],
): Promise<{ readonly marked: readonly Excel.Worksheet[]; readonly bare: readonly Excel.Worksheet[] }> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name,items/id");
  await context.sync();
  const originals = group.map(({ sheetName }) => worksheets.getItem(sheetName));
  const marks = originals.map(askMark);
  const fresh = worksheets.items.filter(({ id }) => !before.includes(id)).map((sheet) => ({ sheet, markOf: askMark(sheet) }));
  await context.sync();
  const known = [mark, ...marks.flatMap((markOf) => markOf() ?? [])];
  const unmarked = fresh.filter(({ markOf }) => markOf() === undefined);
  const formulasOf = (sheet: Excel.Worksheet) => sheet.getUsedRange().load("formulas");
  const copied = unmarked.length === 0 ? [] : originals.map(formulasOf);
  const used = unmarked.map(({ sheet }) => formulasOf(sheet));
  if (unmarked.length > 0) await context.sync();
  const isCopy = ({ formulas }: Excel.Range): boolean => copied.some((one) => JSON.stringify(one.formulas) === JSON.stringify(formulas));
  return {
    marked: fresh.filter(({ markOf }) => known.includes(markOf() ?? "")).map(({ sheet }) => sheet),
    bare: unmarked.filter((_, index) => isCopy(used[index]!)).map(({ sheet }) => sheet),
  };
}

const copyNameOf = (sheetName: string): string => shortened(sheetName, " unplugged");

/**
 * Deletes sheets that stood only for a moment, those of them that are there.
 *
 * @param unsure others that may be there as well, and are not ours for certain: they are only named
 * @throws Unsure when Excel does not let them be deleted
 */
export async function deleteSheets(
  context: Excel.RequestContext,
  sheetNames: readonly string[],
  unsure: readonly string[] = [],
): Promise<void> {
  if (sheetNames.length === 0) return;
  try {
    await twice(async () => {
      const sheets = sheetNames.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
      await context.sync();
      for (const sheet of sheets) if (!sheet.isNullObject) sheet.delete();
      await context.sync();
    });
  } catch (problem) {
    const names = [...sheetNames, ...unsure].map((name) => `“${name}”`).join(", ");
    throw new Unsure(
      `Nothing was made, and what stood here for a moment could not be deleted: look at ${names}, which may still be in the workbook and can go. ${hostWords(problem)}`,
    );
  }
}

/** The day on the wall. */
function today(): number {
  const now = new Date();
  return Math.floor(dayNumberOf(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate())));
}

async function copyGroup(
  context: Excel.RequestContext,
  pairs: readonly Pair[],
  ofWorkbook: Named,
  choices: UnplugChoices,
  mark: string,
): Promise<UnpluggedSheet[]> {
  const knowsNotes = canPlugInAgain();
  const originals = pairs.map(({ sheetName }) => lookAt(context.workbook.worksheets.getItem(sheetName), knowsNotes));
  await context.sync();

  context.application.suspendApiCalculationUntilNextSync();
  const copies = pairs.map((pair, index) => copyAndLook(originals[index]!, pair, namesSeen(originals[index]!, ofWorkbook), choices, mark));
  await context.sync();

  const plans = copies.map((copy, index) => ({
    copy,
    plan: planUnplug(snapshotOf(pairs[index]!, originals[index]!, copy, ofWorkbook), choices.standalone, isoDay(choices.on ?? today())),
  }));
  context.application.suspendApiCalculationUntilNextSync();
  const results = plans.map(({ copy, plan }, index) => writeCopy(copy, originals[index]!, plan, pairs[index]!, choices));
  await context.sync();
  return results;
}
