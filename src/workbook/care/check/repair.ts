import { HalfChanged } from "../../brewing/companion/outcome";
import { hostWords } from "../../grid/words/host-words";
import type { CellValue } from "../../grid/read/named-cells";
import { JustChanged, writeUnlessChanged } from "../../grid/write/write-unless-changed";
import type { Repair } from "./finding";

/** Nothing was written, for a reason that the brewer can do something about. */
export class RepairRefused extends Error {
  constructor(message: string) {
    super(message);
    this.name = "RepairRefused";
  }
}

export interface RepairReport {
  readonly written: number;
  /** Cells that show #NAME? even now; undefined where the workbook could not be looked at again after the write. */
  readonly still: readonly Repair[] | undefined;
}

/**
 * Enters formulas anew: all of them or none. Looks first whether every cell still is as it was when it was checked and
 * may be written; then one write, then one look at what came of it.
 *
 * @throws RepairRefused when a sheet is gone or protected, or a cell was changed meanwhile; HalfChanged when it broke off and
 *   could not be taken back; whatever the host throws otherwise, with every cell as it was
 */
export async function repairFormulas(context: Excel.RequestContext, asked: readonly Repair[]): Promise<RepairReport> {
  const repairs = await refuseIfChanged(context, asked);
  try {
    context.application.suspendApiCalculationUntilNextSync();
    await writeUnlessChanged(
      context,
      repairs.map(({ sheet, address, was }) => ({ sheetName: sheet, range: address, before: [[was]] })),
      () => {
        for (const { sheet, address, formula } of repairs) cell(context, sheet, address).formulas = [[formula]];
      },
    );
  } catch (problem) {
    if (problem instanceof JustChanged)
      throw new RepairRefused(`${problem.range} on “${problem.sheetName}” was changed since the check. Nothing was written; check again.`);
    await takeBack(context, repairs, problem);
    throw problem;
  }
  // The formulas stand by now: a look that fails must not pass for a repair that failed.
  return { written: repairs.length, still: await stillUnknown(context, repairs).catch(() => undefined) };
}

const cell = (context: Excel.RequestContext, sheet: string, address: string): Excel.Range =>
  context.workbook.worksheets.getItem(sheet).getRange(address);

/** @returns those to enter: a cell that another one's formula spills into may have answered with that formula, and is left alone */
async function refuseIfChanged(context: Excel.RequestContext, repairs: readonly Repair[]): Promise<Repair[]> {
  const names = [...new Set(repairs.map(({ sheet }) => sheet))];
  const sheets = names.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
  await context.sync();
  const gone = names.filter((_, index) => sheets[index]?.isNullObject);
  if (gone.length > 0) throw new RepairRefused(`There is no sheet “${gone.join("”, “")}” any more. Nothing was written; check again.`);
  for (const sheet of sheets) sheet.protection.load("protected");
  const present = repairs.map(({ sheet, address }) => {
    const range = cell(context, sheet, address);
    range.load("formulas,address");
    return { range, parent: range.getSpillParentOrNullObject().load("address") };
  });
  await context.sync();
  const locked = names.filter((_, index) => sheets[index]?.protection.protected);
  if (locked.length > 0)
    throw new RepairRefused(
      `“${locked.join("”, “")}” is protected. Nothing was written; lift the protection (Review, Unprotect Sheet), then repair again.`,
    );
  const changed = repairs.find(({ was }, index) => present[index]?.range.formulas[0]?.[0] !== was);
  if (changed)
    throw new RepairRefused(`${changed.address} on “${changed.sheet}” was changed since the check. Nothing was written; check again.`);
  return repairs.filter((_, index) => {
    const { range, parent } = present[index]!;
    return parent.isNullObject || parent.address === range.address;
  });
}

/** Excel carries out what stands before the failing step: everything is put back as it was, but on sheets that are gone by now. */
async function takeBack(context: Excel.RequestContext, repairs: readonly Repair[], problem: unknown): Promise<void> {
  try {
    const sheets = repairs.map(({ sheet }) => context.workbook.worksheets.getItemOrNullObject(sheet));
    await context.sync();
    for (const [index, { address, was }] of repairs.entries()) {
      const sheet = sheets[index];
      if (sheet && !sheet.isNullObject) sheet.getRange(address).formulas = [[asTyped(was)]];
    }
    await context.sync();
  } catch {
    const cells = repairs.map(({ address, sheet }) => `${address} on “${sheet}”`).join(", ");
    throw new HalfChanged(`Writing broke off and could not be taken back. Look at ${cells}. ${hostWords(problem)}`);
  }
}

/** A text that looks like a number must stay a text. */
const asTyped = (was: CellValue): CellValue => (typeof was === "string" && was !== "" && !was.startsWith("=") ? `'${was}` : was);

async function stillUnknown(context: Excel.RequestContext, repairs: readonly Repair[]): Promise<Repair[]> {
  const ranges = repairs.map(({ sheet, address }) => {
    const range = cell(context, sheet, address);
    range.load("values");
    return range;
  });
  await context.sync();
  return repairs.filter((_, index) => ranges[index]?.values[0]?.[0] === "#NAME?");
}
