import { ToldInFull } from "../../grid/words/told-in-full";
import type { CellValue } from "../../grid/read/named-cells";
import { changeRanges, JustChanged } from "../../grid/write/change-ranges";
import type { Repair } from "./finding";

/** Nothing was written, for a reason that the brewer can do something about. */
export class RepairRefused extends ToldInFull {
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
 * @throws RepairRefused when a sheet is gone or protected, or a cell was changed meanwhile; otherwise as `writeSurely`
 */
export async function repairFormulas(context: Excel.RequestContext, asked: readonly Repair[]): Promise<RepairReport> {
  const repairs = await refuseIfChanged(context, asked);
  const changes = repairs.map(({ sheet, address, formula, was }) => ({
    sheetName: sheet,
    range: address,
    before: [[was]],
    again: [[asTyped(was)]],
    content: [[formula]],
  }));
  try {
    await changeRanges(context, changes, { place: repairs.map(({ address, sheet }) => `${address} on “${sheet}”`).join(", ") });
  } catch (problem) {
    if (problem instanceof JustChanged)
      throw new RepairRefused(`${problem.range} on “${problem.sheetName}” was changed since the check. Nothing was written; check again.`);
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
