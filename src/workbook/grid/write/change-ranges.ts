import { writtenAgain } from "../words/cell-text";
import { hostWords } from "../words/host-words";
import { ToldInFull, Unsure } from "../words/told-in-full";
import type { CellValue, NamedCells } from "../read/named-cells";
import { block } from "../plan/addresses";
import { isAsTyped, isSame } from "./same-content";
import { twice, writeSurely, type Standing } from "./write-surely";

export type Cells = readonly (readonly CellValue[])[];

/** Cells that were looked at a round trip ago, and what they held then: formulas, or constants. */
export interface LookedAt {
  readonly sheetName: string;
  readonly range: string;
  readonly before: Cells;
}

/** Cells that change. */
export interface RangeChange extends LookedAt {
  /** What stood there, as it must be typed to stand there again. */
  readonly again: Cells;
  /** What comes there, as it is typed. */
  readonly content: Cells;
}

/** What goes along with cells that change: looks, notes, the printed area. It comes before them, so that where they stand it stands too. */
export interface Along {
  /** Queues it. */
  readonly write: () => void;
  /** Undoes it, however far it came; it may be asked twice. */
  readonly takeBack: () => Promise<void>;
}

/** Somebody else was quicker. Theirs stands as they left it; nothing of ours is left. */
export class JustChanged extends ToldInFull {
  readonly code = "JustChanged";

  constructor(
    readonly sheetName: string,
    readonly range: string,
    override readonly isSettled = true,
  ) {
    super(`Somebody has just changed ${range} on “${sheetName}”. Nothing was written; look again.`);
    this.name = "JustChanged";
  }
}

/** A block of a sheet as it was read, and what comes there. */
export function rangeChange(sheet: NamedCells, range: string, content: Cells): RangeChange {
  const { from } = block(range);
  const every = (read: (row: number, column: number) => CellValue): CellValue[][] =>
    content.map((line, row) => line.map((_, column) => read(from.row + row, from.column + column)));
  return {
    sheetName: sheet.sheetName,
    range,
    content,
    before: every((row, column) => sheet.formulaAt(row, column)),
    again: every((row, column) => writtenAgain(sheet.formulaAt(row, column), sheet.at(row, column))),
  };
}

/**
 * Changes cells of sheets that are there: all of them or none, in one `context.sync()`.
 *
 * Two panes can look at the same empty cells and both write into them; Excel has no lock against that. But a round trip
 * is done in the order asked for, by nobody else in between. So the cells are read once more in the very trip that
 * writes, just before the write: if they are not what was seen, what stood there is put back.
 *
 * @param watched cells that do not change, and must not have been changed by anybody else either
 * @param place what is changed, in words: "the readings on “Batch 7”"
 * @throws JustChanged; otherwise as `writeSurely`
 */
export async function changeRanges(
  context: Excel.RequestContext,
  changes: readonly RangeChange[],
  { place, watched = [], along }: { readonly place: string; readonly watched?: readonly LookedAt[]; readonly along?: Along },
): Promise<void> {
  const rangeOf = ({ sheetName, range }: LookedAt) => context.workbook.worksheets.getItem(sheetName).getRange(range);
  await writeSurely({
    place,
    write: async () => {
      const overwritten = watch(context, [...changes, ...watched]);
      context.application.suspendApiCalculationUntilNextSync();
      along?.write();
      for (const change of changes) rangeOf(change).formulas = change.content as CellValue[][];
      await context.sync();
      const late = overwritten.find(isLate);
      if (late) {
        await putBack(context, place, overwritten.slice(0, changes.length), along);
        throw new JustChanged(late.sheetName, late.range);
      }
    },
    look: async () => {
      const standing = standingOf(changes, await readAgain(context, changes));
      return standing === "nothing" && along ? "half" : standing;
    },
    takeBack: async () => {
      const now = await readAgain(context, changes);
      changes.forEach((change, index) => {
        const found = now[index];
        if (found === undefined) return;
        const cells = change.content.map((line, row) =>
          line.map((content, column) =>
            isAsTyped(content, found.formulas[row]?.[column] ?? "")
              ? (change.again[row]?.[column] ?? "")
              : writtenAgain(found.formulas[row]?.[column] ?? "", found.values[row]?.[column]),
          ),
        );
        if (standingOf([change], [found]) !== "nothing") rangeOf(change).formulas = cells;
      });
      await context.sync();
      await along?.takeBack().catch((refusal: unknown) => {
        // A protected sheet: what is locked now was locked then, so that nothing of it is there.
        if (!isLocked(refusal)) throw refusal;
      });
    },
  });
}

const isLocked = (problem: unknown): boolean => problem instanceof Error && "code" in problem && problem.code === "AccessDenied";

export interface Watched extends LookedAt {
  readonly found: Excel.Range;
}

/** Reads cells just before they are written over, in the same round trip. */
export const watch = (context: Excel.RequestContext, lookedAt: readonly LookedAt[]): Watched[] =>
  lookedAt.map((one) => ({
    ...one,
    found: context.workbook.worksheets.getItem(one.sheetName).getRange(one.range).load("formulas,values"),
  }));

/** Whether they held something else than was seen. */
export const isLate = ({ before, found }: Watched): boolean => !isSameBlock(before, found.formulas as CellValue[][]);

/** What stood there when we wrote, which was somebody else's. */
export async function putBack(context: Excel.RequestContext, place: string, overwritten: readonly Watched[], along?: Along): Promise<void> {
  try {
    await twice(async () => {
      for (const { sheetName, range, found } of overwritten)
        context.workbook.worksheets.getItem(sheetName).getRange(range).formulas = (found.formulas as CellValue[][]).map((line, row) =>
          line.map((formula, column) => writtenAgain(formula, found.values[row]?.[column])),
        );
      await context.sync();
      await along?.takeBack();
    });
  } catch (problem) {
    throw new Unsure(`Somebody was writing at the same moment, and what they wrote may be lost: look at ${place}. ${hostWords(problem)}`);
  }
}

interface Found {
  readonly formulas: Cells;
  readonly values: Cells;
}

/** The cells as they are now; undefined where their sheet is gone. */
async function readAgain(context: Excel.RequestContext, changes: readonly LookedAt[]): Promise<(Found | undefined)[]> {
  const sheets = changes.map(({ sheetName }) => context.workbook.worksheets.getItemOrNullObject(sheetName));
  await context.sync();
  const found = changes.map(({ range }, index) =>
    sheets[index]!.isNullObject ? undefined : sheets[index]!.getRange(range).load("formulas,values"),
  );
  await context.sync();
  return found;
}

/** Judged by the cells that were to change; what somebody else has written meanwhile is none of ours. */
function standingOf(changes: readonly RangeChange[], now: readonly (Found | undefined)[]): Standing {
  let [written, missing] = [0, 0];
  changes.forEach(({ content, before }, index) =>
    content.forEach((line, row) =>
      line.forEach((typed, column) => {
        if (isAsTyped(typed, before[row]?.[column] ?? "")) return;
        const found = now[index];
        if (found && isAsTyped(typed, found.formulas[row]?.[column] ?? "")) written += 1;
        else missing += 1;
      }),
    ),
  );
  return missing === 0 ? (written === 0 ? "nothing" : "everything") : written === 0 ? "nothing" : "half";
}

const isSameBlock = (before: Cells, now: Cells): boolean =>
  before.every((line, row) => line.every((value, column) => isSame(value, now[row]?.[column] ?? "")));
