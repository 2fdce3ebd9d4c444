import type { CellContent } from "../../grid/plan/sheet-plan";
import type { BatchMark } from "../../batch/read/batch-marks";
import { keptColumns, plainSheet, type OnSheet } from "./season-columns";

/** What the brewer has typed beside a batch. */
export interface Typed {
  readonly left: CellContent;
  readonly remark: CellContent;
  /** Cells of their own, right of ours, as they were typed; formulas in R1C1 notation, so that they may move. */
  readonly own: readonly CellContent[];
}

/** A row of the list. `sheetName` is undefined where the batch sheet was deleted, but its batch was brewed or something was typed beside it. */
export interface SeasonRow extends Typed, OnSheet {
  readonly sheetName: string | undefined;
  readonly id: string;
  /** What a row without its sheet is called. */
  readonly lastName: string;
  /** The year with which its figures were closed: they do not follow its sheet any more. */
  readonly closed: number | "";
  /** Its figures as they were last seen, by `keptColumns`; "" where there was none. */
  readonly kept: readonly CellContent[];
}

/** A row as it stands. */
export interface PresentRow extends SeasonRow {
  /** False where its formulas speak of a sheet that was deleted and nobody has said so in the list yet. */
  readonly settled: boolean;
  /** Its figures as the list shows them now, where its sheet is there to show them. */
  readonly shown: readonly CellContent[];
  /** The brewer has emptied the name of a batch whose sheet is gone: it is to leave the list. */
  readonly letGo: boolean;
}

/** What a refresh did to the list, in names of sheets. */
export interface Merged {
  readonly rows: readonly SeasonRow[];
  readonly added: readonly string[];
  /** Their sheets are gone; they were brewed, or something was typed beside them, and stay at the end of the list. */
  readonly kept: readonly string[];
  /** Their sheets are gone; they were only planned, and nothing was typed beside them. Or the brewer has let them go. */
  readonly dropped: readonly string[];
}

export const nothingTyped: Typed = { left: "", remark: "", own: [] };
/** What a new row begins with. */
export const newRow = { ...nothingTyped, closed: "", kept: [], ...plainSheet } as const;

const keptIndex = (letter: string): number => keptColumns.findIndex((one) => one.letter === letter);
const [nameAt, dayAt, stateAt] = [keptIndex("B"), keptIndex("D"), keptIndex("E")];

/** Whether beer was made: it counts, with its sheet or without. */
export const wasBrewed = ({ kept }: Pick<SeasonRow, "kept">): boolean =>
  ![undefined, "", "planned"].includes(kept[stateAt] as string | undefined);

/** The year in which a batch was brewed; undefined for one that was only planned. */
export function yearOf(row: Pick<SeasonRow, "kept">): number | undefined {
  const day = row.kept[dayAt];
  // Day number 1 is 1900-01-01, and 1900 counts as a leap year.
  return typeof day === "number" && day > 60 && wasBrewed(row)
    ? new Date(Date.UTC(1899, 11, 30 + Math.floor(day))).getUTCFullYear()
    : undefined;
}

export const hasTyped = ({ left, remark, own }: Typed): boolean => [left, remark, ...own].some((content) => content !== "");

/**
 * The list as it should be: one row for each batch sheet, in the order of the tabs, each with what was typed beside it. A row finds
 * its sheet by the sheet its formulas speak of, which Excel renames with the sheet; a row whose sheet was deleted finds
 * a new one by the batch's mark.
 */
export function mergeRows(
  present: readonly PresentRow[],
  sheets: readonly BatchMark[],
  told: (sheetName: string) => OnSheet = () => plainSheet,
): Merged {
  const bySheet = new Map(present.flatMap((row) => (row.sheetName === undefined ? [] : [[row.sheetName.toLowerCase(), row] as const])));
  const claimed = new Set(sheets.flatMap(({ sheetName }) => bySheet.get(sheetName.toLowerCase()) ?? []));
  const orphans = present.filter((row) => !claimed.has(row));
  const added: string[] = [];
  const rows = sheets.map(({ sheetName, id }): SeasonRow => {
    const known = bySheet.get(sheetName.toLowerCase());
    const found = known ?? take(orphans, (row) => id !== "" && row.id === id);
    if (!known) added.push(sheetName);
    const { left, remark, own, closed, kept } = found ?? newRow;
    return {
      left,
      remark,
      own,
      sheetName,
      id,
      lastName: sheetName,
      closed,
      kept: closed === "" && found ? found.shown : kept,
      ...told(sheetName),
    };
  });
  const stays = (row: PresentRow): boolean => hasTyped(row) || (wasBrewed(row) && !row.letGo);
  const staying = orphans.filter(stays);
  return {
    rows: [
      ...rows,
      ...staying.map(({ left, remark, own, id, lastName, closed, kept }): SeasonRow => {
        const named = kept.map((figure, index) => (index === nameAt && figure === "" ? lastName : figure));
        return { left, remark, own, id, lastName, closed, kept: named, sheetName: undefined, ...plainSheet };
      }),
    ],
    added,
    kept: staying.filter(({ sheetName, settled }) => sheetName !== undefined || !settled).map(({ lastName }) => lastName),
    dropped: orphans.filter((row) => !stays(row)).map(({ lastName }) => lastName),
  };
}

function take<T>(from: T[], wanted: (one: T) => boolean): T | undefined {
  const at = from.findIndex(wanted);
  return at < 0 ? undefined : from.splice(at, 1)[0];
}
