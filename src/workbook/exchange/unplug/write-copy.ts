import { address, block as blockOf, localAddress, position } from "../../grid/plan/addresses";
import { ownNames } from "../../grid/read/own-names";
import { isPrivate } from "../../batch/private-words";
import { batchMark, unpluggedMark } from "../../batch/read/batch-sheets";
import { fingerprint } from "./fingerprint";
import { noteText } from "./kept-formula";
import type { Copy, Original, Pair } from "./look-at-copy";
import type { CellChange } from "./plan-unplug";
import type { UnplugChoices, UnpluggedSheet } from "./unplugged-sheet";

/** Named cells that tell what things cost; the batch sheet's own names. */
const priceNames = ["malt_cost", "hop_cost", "yeast_cost", "other_cost", "cost_plan", "cost_each"];

/** Puts the changes into a copy, and takes out of it what stays with the brewer. */
export function writeCopy(
  { sheet, notePlaces }: Copy,
  original: Original,
  planned: readonly CellChange[],
  { sheetName, copyName }: Pair,
  { prices }: UnplugChoices,
): UnpluggedSheet {
  // A value that a formula leaves behind may be the private words of another cell, the clock's step for one.
  const changes = planned.map((change) => ({
    ...change,
    contents: change.contents.map((row) => row.map((content) => (isPrivate(content) ? "" : content))),
  }));
  for (const { block, contents } of changes) sheet.getRange(block).formulas = contents;
  const names = new Map(ownNames(original.sheet).map(({ name, formula }) => [name.toLowerCase(), localAddress(String(formula))]));
  if (!prices) for (const name of priceNames) if (names.has(name)) sheet.getRange(names.get(name)).clear("Contents");
  const mark = names.get(batchMark);
  if (mark !== undefined) {
    leavePrivateCells(sheet, original);
    sheet.names.getItem(batchMark).delete();
    sheet.names.add(unpluggedMark, sheet.getRange(mark));
  }
  const privateNotes = original.notes === undefined ? 0 : writeNotes(sheet, notePlaces, changes);
  return {
    sheetName,
    copyName,
    plain: changes.filter(({ reason }) => reason === undefined).length,
    values: changes.flatMap(({ cell, reason }) => (reason === undefined ? [] : [{ cell, reason }])),
    privateNotes,
    canPlugIn: original.notes !== undefined,
  };
}

/**
 * What a brewer typed into a batch sheet stays behind where it begins with "private", also as ="private …". Empty words
 * instead of clearing, which a cell that begins a merged one would refuse.
 */
function leavePrivateCells(sheet: Excel.Worksheet, { used }: Original): void {
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  for (const [row, cells] of (used.formulas as unknown[][]).entries()) {
    for (const [column, content] of cells.entries()) {
      if (isPrivate(content)) sheet.getRange(address(corner.row + row, corner.column + column)).values = [[""]];
    }
  }
}

/** Removes private notes and adds ours; a note of the brewer's own in such a cell is kept in it. Returns how many were private. */
function writeNotes(sheet: Excel.Worksheet, places: Copy["notePlaces"], changes: readonly CellChange[]): number {
  const existing = new Map(places.map(({ range, content }) => [localAddress(range.address).split(":")[0] ?? "", content]));
  let removed = 0;
  for (const [cell, content] of existing) {
    if (!isPrivate(content)) continue;
    sheet.notes.getItem(cell).delete();
    removed += 1;
  }
  for (const { cell, block, contents, formula, reason } of changes) {
    const before = existing.get(cell);
    const kept = before === undefined || isPrivate(before) ? undefined : before;
    const { from, to } = blockOf(block);
    const wholeBlock = `${address(from.row, from.column)}:${address(to.row, to.column)}`;
    const text = noteText(
      { block: wholeBlock, formula, marks: contents.flat().map(fingerprint), ...(kept === undefined ? {} : { note: kept }) },
      reason,
    );
    if (kept === undefined) sheet.notes.add(cell, text);
    else sheet.notes.getItem(cell).content = text;
  }
  return removed;
}
