import type { NamedCells } from "../../grid/read/named-cells";
import type { BatchSheet } from "../../batch/read/batch-sheets";
import { blockFields, type BlockKey } from "../../batch/fields/blocks";
import { withBlocks } from "../../batch/new-batch";
import { batchContents } from "../../batch/read/batch-contents";
import { standing } from "../../batch/read/standing";
import { planBatch } from "../../batch/sheet/plan";
import { address, block, position } from "../../grid/plan/addresses";
import { cellRange } from "../../grid/plan/cell-range";
import type { CellContent, CellPlan, SheetPlan } from "../../grid/plan/sheet-plan";
import { moved, placeMap } from "../check/place-map";

/** A formula of ours that follows a block from now on. */
export interface Followed {
  readonly address: string;
  readonly content: CellContent;
  readonly was: CellContent;
}

/** What a sheet gains with its blocks, where it has room for it. */
export interface Growth {
  /** Rows that are new, from the first to the last: nothing stands in them. */
  readonly rows: { readonly from: number; readonly to: number };
  readonly starts: readonly { readonly label: string; readonly cell: string }[];
  /** The new rows only, at their places. */
  readonly plan: Pick<SheetPlan, "cells" | "names" | "rowHeights" | "validations" | "notes" | "highlights" | "print">;
  readonly followed: readonly Followed[];
  readonly kept: readonly string[];
}

/** The sheet as it would be planned with the blocks, less what it has: whoever adds a block later gets what a new sheet with it has. */
export function grown(sheet: BatchSheet, keys: readonly BlockKey[]): Growth {
  const [contents, now] = [batchContents(sheet), standing(sheet)];
  const before = planBatch(contents, now);
  const after = planBatch(withBlocks(contents, keys), { ...now, blocks: [...(now.blocks ?? []), ...keys] });
  const firstPlanned = Math.max(...before.cells.map((cell) => block(cellRange(cell)).to.row)) + 1;
  const from = Math.max(lastRow(sheet) + 1, 1);
  const [place, shift] = [placeMap(before, sheet), from - firstPlanned];
  const isNew = (range: string): boolean => block(range).from.row >= firstPlanned;
  const at = (planned: string): string | undefined => {
    const { row, column } = position(planned);
    return row >= firstPlanned ? address(row + shift, column) : place(planned);
  };
  const whole = (range: string): string =>
    range
      .split(":")
      .map((corner) => at(corner) ?? corner)
      .join(":");
  const there = (content: CellContent): CellContent =>
    typeof content === "string" && content.startsWith("=") ? (moved(content, at) ?? content) : content;
  const cells = after.cells
    .filter((cell) => isNew(cell.address))
    .map((cell): CellPlan => ({
      ...cell,
      address: whole(cell.address),
      content: there(cell.content),
      ...(cell.spillsTo && { spillsTo: whole(cell.spillsTo) }),
    }));
  const names = after.names.filter(({ range }) => isNew(range)).map(({ name, range }) => ({ name, range: whole(range) }));
  const areas = keys.map((key) => ({ label: blockFields[key].label, area: blockFields[key].area }));
  return {
    rows: { from, to: Math.max(from, ...cells.map((cell) => block(cellRange(cell)).to.row)) },
    starts: areas.map(({ label, area }) => ({ label, cell: names.find(({ name }) => name === area)?.range.split(":")[0] ?? "" })),
    plan: {
      cells,
      names,
      rowHeights: after.rowHeights.filter(({ row }) => row >= firstPlanned).map(({ row, points }) => ({ row: row + shift, points })),
      validations: after.validations.filter(({ range }) => isNew(range)).map((one) => ({ ...one, range: whole(one.range) })),
      notes: after.notes.filter((note) => isNew(note.address)).map((note) => ({ ...note, address: whole(note.address) })),
      highlights: after.highlights
        .filter(({ range }) => isNew(range))
        .map((one) => ({ ...one, range: whole(one.range), formula: String(there(one.formula)) })),
      print: {
        ...after.print,
        area: `A1:I${block(after.print.area).to.row + shift}`,
        breaksBeforeRow: after.print.breaksBeforeRow.filter((row) => row >= firstPlanned).map((row) => row + shift),
      },
    },
    ...followers(sheet, before, after, place, at),
  };
}

/** A formula at its place; words are the same at every place. */
const asMoved = (content: string, place: (planned: string) => string | undefined): string | undefined =>
  content.startsWith("=") ? moved(content, place) : content;

/** Formulas and words above the new rows that the blocks change. One that is not as planned is the brewer's own. */
function followers(
  sheet: BatchSheet,
  before: SheetPlan,
  after: SheetPlan,
  place: (planned: string) => string | undefined,
  at: (planned: string) => string | undefined,
): Pick<Growth, "followed" | "kept"> {
  const changed = new Map(after.cells.map((cell) => [cell.address, cell.content]));
  const followed: Followed[] = [];
  const kept: string[] = [];
  for (const { address: planned, content } of before.cells) {
    const next = changed.get(planned);
    if (next === undefined || next === content || typeof next !== "string" || typeof content !== "string") continue;
    const where = place(planned);
    if (where === undefined) continue;
    const { row, column } = position(where);
    const was = sheet.formulaAt(row, column) as CellContent;
    const [former, today] = [asMoved(content, place), asMoved(next, at)];
    if (today !== undefined && former === was) followed.push({ address: where, content: today, was });
    else kept.push(where);
  }
  return { followed, kept };
}

function lastRow(sheet: NamedCells): number {
  let last = 1;
  for (const name of sheet.names()) last = Math.max(last, sheet.area(name).to.row);
  for (const { address: filled } of sheet.filled()) last = Math.max(last, block(filled).to.row);
  return last;
}
