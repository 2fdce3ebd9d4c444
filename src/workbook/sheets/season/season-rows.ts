import type { CellContent } from "../../grid/plan/sheet-plan";
import type { BatchMark } from "../../batch/read/batch-marks";

/** What the brewer has typed beside a batch. */
export interface Typed {
  readonly left: CellContent;
  readonly remark: CellContent;
  /** Cells of their own, right of ours, as they were typed; formulas in R1C1 notation, so that they may move. */
  readonly own: readonly CellContent[];
}

/** A row of the list. `sheetName` is undefined where the batch sheet was deleted and the brewer had typed something beside it. */
export interface SeasonRow extends Typed {
  readonly sheetName: string | undefined;
  readonly id: string;
  /** What a row without its sheet is called. */
  readonly lastName: string;
}

/** A row as it stands. */
export interface PresentRow extends SeasonRow {
  /** False where its formulas speak of a sheet that was deleted and nobody has said so in the list yet. */
  readonly settled: boolean;
}

/** What a refresh did to the list, in names of sheets. */
export interface Merged {
  readonly rows: readonly SeasonRow[];
  readonly added: readonly string[];
  /** Their sheets are gone; what was typed beside them is kept at the end of the list. */
  readonly kept: readonly string[];
  /** Their sheets are gone, and nothing was typed beside them. */
  readonly dropped: readonly string[];
}

export const nothingTyped: Typed = { left: "", remark: "", own: [] };

export const hasTyped = ({ left, remark, own }: Typed): boolean => [left, remark, ...own].some((content) => content !== "");

/**
 * The list as it should be: one row for each batch sheet, in the order of the tabs, each with what was typed beside it. A row finds
 * its sheet by the sheet its formulas speak of, which Excel renames with the sheet; a row whose sheet was deleted finds
 * a new one by the batch's mark.
 */
export function mergeRows(present: readonly PresentRow[], sheets: readonly BatchMark[]): Merged {
  const bySheet = new Map(present.flatMap((row) => (row.sheetName === undefined ? [] : [[row.sheetName.toLowerCase(), row] as const])));
  const claimed = new Set(sheets.flatMap(({ sheetName }) => bySheet.get(sheetName.toLowerCase()) ?? []));
  const orphans = present.filter((row) => !claimed.has(row));
  const added: string[] = [];
  const rows = sheets.map(({ sheetName, id }): SeasonRow => {
    const known = bySheet.get(sheetName.toLowerCase());
    const found = known ?? take(orphans, (row) => id !== "" && row.id === id);
    if (!known) added.push(sheetName);
    const { left, remark, own } = found ?? nothingTyped;
    return { left, remark, own, sheetName, id, lastName: sheetName };
  });
  const kept = orphans.filter(hasTyped);
  return {
    rows: [
      ...rows,
      ...kept.map(({ left, remark, own, id, lastName }): SeasonRow => ({ left, remark, own, id, lastName, sheetName: undefined })),
    ],
    added,
    kept: kept.filter(({ sheetName, settled }) => sheetName !== undefined || !settled).map(({ lastName }) => lastName),
    dropped: orphans.filter((row) => !hasTyped(row)).map(({ lastName }) => lastName),
  };
}

function take<T>(from: T[], wanted: (one: T) => boolean): T | undefined {
  const at = from.findIndex(wanted);
  return at < 0 ? undefined : from.splice(at, 1)[0];
}
