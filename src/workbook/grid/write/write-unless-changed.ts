import { writtenAgain } from "../words/cell-text";
import type { CellValue } from "../read/named-cells";

/** Cells that were looked at a round trip ago, and what they held then: formulas, or constants. */
export interface LookedAt {
  readonly sheetName: string;
  readonly range: string;
  readonly before: readonly (readonly CellValue[])[];
}

/** Somebody else was quicker. Theirs stands as they left it; nothing of ours is left. */
export class JustChanged extends Error {
  readonly code = "JustChanged";

  constructor(
    readonly sheetName: string,
    readonly range: string,
  ) {
    super(`Somebody has just changed ${range} on “${sheetName}”. Nothing was written; look again.`);
    this.name = "JustChanged";
  }
}

/**
 * Two panes can look at the same empty cells and both write into them; Excel has no lock against that. But a round trip
 * is done in the order asked for, by nobody else in between. So the cells are read once more in the very trip that
 * writes, just before the write: if they are not what was seen, what stood there is put back.
 *
 * @param write queues what is to be written, those cells only, without a sync
 * @throws JustChanged; whatever the host throws, and then the caller takes back
 */
export async function writeUnlessChanged(context: Excel.RequestContext, lookedAt: readonly LookedAt[], write: () => void): Promise<void> {
  const cells = ({ sheetName, range }: LookedAt) => context.workbook.worksheets.getItem(sheetName).getRange(range);
  const overwritten = lookedAt.map((one) => cells(one).load("formulas,values"));
  write();
  await context.sync();
  const late = lookedAt.find(
    ({ before }, index) =>
      !before.every((line, row) => line.every((value, column) => isSame(value, overwritten[index]?.formulas[row]?.[column] as CellValue))),
  );
  if (!late) return;
  lookedAt.forEach((one, index) => {
    cells(one).formulas = asItStood(overwritten[index]);
  });
  await context.sync();
  throw new JustChanged(late.sheetName, late.range);
}

const asItStood = (range: Excel.Range | undefined): CellValue[][] =>
  (range?.formulas ?? []).map((line: CellValue[], row: number) =>
    line.map((formula, column) => writtenAgain(formula, range?.values[row]?.[column])),
  );

/** Numbers are the same when only Excel's own rounding is between them. */
export const isSame = (one: CellValue, other: CellValue): boolean =>
  typeof one === "number" && typeof other === "number" ? Math.abs(one - other) < 1e-9 : one === other;
