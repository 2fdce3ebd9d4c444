import { sheetNameProblem } from "../words/sheet-name";
import type { SheetPlan } from "../plan/sheet-plan";
import { withSecondLook } from "../read/second-look";
import { writeSheet } from "./write-sheet";

/** A sheet that cannot be inserted as asked, in words for the brewer. The workbook is as it was. */
export class InsertionRefused extends Error {
  constructor(
    message: string,
    /** A name that is free, where the one asked for is taken. */
    readonly freeName?: string,
  ) {
    super(message);
    this.name = "InsertionRefused";
  }
}

/**
 * Puts a planned sheet into the workbook: all of it or nothing. It never touches a sheet that is already there, needs two
 * `context.sync()` (one to look, one to write) and takes back what it began when the second fails. Where somebody else was quicker, it looks again.
 *
 * @param selected the cell that is in front afterwards; "behind" leaves in front what is there now
 * @throws InsertionRefused when the name is taken or not allowed
 */
export async function insertSheet(context: Excel.RequestContext, plan: SheetPlan, selected: string): Promise<void> {
  const problem = sheetNameProblem(plan.sheetName);
  if (problem) throw new InsertionRefused(problem);
  await withSecondLook(() => lookAndWrite(context, plan, selected));
}

async function lookAndWrite(context: Excel.RequestContext, plan: SheetPlan, selected: string): Promise<void> {
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  const tables = context.workbook.tables;
  tables.load("items/name");
  await context.sync();

  refuseTaken(
    sheets.items.map(({ name }) => name),
    plan.sheetName,
  );
  const mark = writingMark();
  try {
    context.application.suspendApiCalculationUntilNextSync();
    // Under its own name from the first: renaming a sheet would end what the brewer can undo.
    const sheet = sheets.add(plan.sheetName);
    const begun = sheet.names.add(mark, sheet.getRange("A1"));
    writeSheet(sheet, plan, freeTableEnding(tables.items.map(({ name }) => name)));
    begun.delete();
    if (selected !== "behind") {
      sheet.activate();
      sheet.getRange(selected).select();
    }
    await context.sync();
  } catch (problemWhileWriting) {
    await takeBack(context, plan.sheetName, mark);
    throw problemWhileWriting;
  }
}

/** A name that stands on a sheet only while it is being written, and on no other sheet: whose sheet it is, and that it is half done. */
export const writingMarkBegins = "gylebook_writing_";
const writingMark = (): string =>
  writingMarkBegins + Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(36)).join("");

/** Excel carries out what stands before the failing step, so a half-written sheet may be there, with our mark. */
async function takeBack(context: Excel.RequestContext, sheetName: string, mark: string): Promise<void> {
  const half = context.workbook.worksheets.getItemOrNullObject(sheetName);
  await context.sync();
  if (half.isNullObject) return;
  const ours = half.names.getItemOrNullObject(mark);
  await context.sync();
  if (ours.isNullObject) return;
  half.delete();
  await context.sync();
}

const isTaken = (names: readonly string[], wanted: string): boolean => names.some((name) => name.toLowerCase() === wanted.toLowerCase());

/** @throws InsertionRefused, with a name that is free, when a sheet has the one wanted */
export function refuseTaken(names: readonly string[], wanted: string): void {
  if (!isTaken(names, wanted)) return;
  const free = freeName(names, wanted);
  throw new InsertionRefused(`There is a sheet "${wanted}" already. Use "${free}" instead?`, free);
}

/** "Batch 7" → "Batch 7 (2)": the first one that no sheet has, within Excel's 31 characters. */
export function freeName(names: readonly string[], wanted: string): string {
  if (!isTaken(names, wanted)) return wanted;
  for (let number = 2; ; number += 1) {
    const ending = ` (${number})`;
    // No half of a sign that takes two, such as an emoji, is left at the cut: no file can hold one.
    const candidate = wanted.slice(0, 31 - ending.length).replace(/[\uD800-\uDBFF]$/, "") + ending;
    if (!isTaken(names, candidate)) return candidate;
  }
}

/** Table names are shared by the whole workbook: "Malt_1", "Malt_2"… */
function freeTableEnding(names: readonly string[]): string {
  const taken = new Set(names.map((name) => name.slice(name.lastIndexOf("_") + 1)));
  for (let number = 1; ; number += 1) if (!taken.has(String(number))) return String(number);
}
