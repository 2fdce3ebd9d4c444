import { canPlugInAgain } from "./can-plug-in";
import { newBatchId } from "../../batch/batch-id";
import { freeName, refuseTaken } from "../../grid/write/insert-sheet";
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
 * that keeps the formula; private notes, and prices if wished, stay behind. The sheets themselves are only read. All or
 * nothing: when something fails or is stopped, the copies made so far are deleted again. Three `context.sync()` for
 * eight sheets, after one that looks around.
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
    await throughGroups(
      groupsOf(sheetNames, () => 1, sheetsAtOnce),
      "sheet",
      work,
      async (group) => {
        const pairs = group.map((sheetName) => {
          if (choices.copyName !== undefined) refuseTaken(taken, choices.copyName);
          const copyName = choices.copyName ?? freeName(taken, copyNameOf(sheetName));
          taken.push(copyName);
          return { sheetName, copyName, workingName: `Gylebook copies ${newBatchId()}` };
        });
        begun.push(...pairs);
        made.push(...(await copyGroup(context, pairs, ofWorkbook, choices)));
      },
    );
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

async function copyGroup(
  context: Excel.RequestContext,
  pairs: readonly Pair[],
  ofWorkbook: Named,
  choices: UnplugChoices,
): Promise<UnpluggedSheet[]> {
  const knowsNotes = canPlugInAgain();
  const originals = pairs.map(({ sheetName }) => lookAt(context.workbook.worksheets.getItem(sheetName), knowsNotes));
  await context.sync();

  context.application.suspendApiCalculationUntilNextSync();
  const copies = pairs.map((pair, index) => copyAndLook(originals[index]!, pair, namesSeen(originals[index]!, ofWorkbook), choices));
  await context.sync();

  const plans = copies.map((copy, index) => ({
    copy,
    changes: planUnplug(snapshotOf(pairs[index]!, originals[index]!, copy, ofWorkbook), choices.standalone),
  }));
  context.application.suspendApiCalculationUntilNextSync();
  const results = plans.map(({ copy, changes }, index) => writeCopy(copy, originals[index]!, changes, pairs[index]!, choices));
  await context.sync();
  return results;
}
