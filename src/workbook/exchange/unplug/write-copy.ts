import { address, block as blockOf, localAddress, position } from "../../grid/plan/addresses";
import { styles } from "../../grid/plan/styles";
import { sheetKind, sheetKindAt } from "../../batch/sheet/card";
import { ownNames } from "../../grid/read/own-names";
import { isPrivate } from "../../batch/private-words";
import { batchMark, unpluggedMark } from "../../batch/read/batch-sheets";
import { fingerprint } from "./fingerprint";
import { noteText, stillLineName, stillName, workingsName } from "./kept-formula";
import type { Copy, Original, Pair } from "./look-at-copy";
import type { CellChange } from "./cell-change";
import type { UnplugPlan } from "./plan-unplug";
import { cellAt } from "./sheet-snapshot";
import type { WorkingBlock } from "./working-cells";
import type { UnplugChoices, UnpluggedSheet } from "./unplugged-sheet";

/** Named cells that tell what things cost; the batch sheet's own names. */
const priceNames = ["malt_cost", "hop_cost", "yeast_cost", "other_cost", "cost_plan", "cost_each"];

/** Puts the changes into a copy, and takes out of it what stays with the brewer. */
export function writeCopy(
  { sheet, notePlaces }: Copy,
  original: Original,
  { changes: planned, still }: UnplugPlan,
  { sheetName, copyName }: Pair,
  { prices }: UnplugChoices,
): UnpluggedSheet {
  // A value that a formula leaves behind may be the private words of another cell, the clock's step for one.
  const changes = planned.map((change) => ({
    ...change,
    contents: change.contents.map((row) => row.map((content) => (isPrivate(content) ? "" : content))),
  }));
  for (const { block, contents } of changes) sheet.getRange(block).formulas = contents;
  const named = writeWorkings(sheet, changes);
  const names = new Map(ownNames(original.sheet).map(({ name, formula }) => [name.toLowerCase(), localAddress(String(formula))]));
  if (!prices) for (const name of priceNames) if (names.has(name)) sheet.getRange(names.get(name)).clear("Contents");
  const mark = names.get(batchMark);
  if (mark !== undefined) {
    leavePrivateCells(sheet, original, names.get("steps"));
    sheet.names.getItem(batchMark).delete();
    sheet.names.add(unpluggedMark, sheet.getRange(mark));
  }
  if (still) writeStill(sheet, original, still);
  const privateNotes = original.notes === undefined ? 0 : writeNotes(sheet, notePlaces, changes, named);
  return {
    sheetName,
    copyName,
    plain: changes.filter(({ reason }) => reason === undefined).length,
    values: changes.flatMap(({ cell, reason }) => (reason === undefined ? [] : [{ cell, reason }])),
    privateNotes,
    canPlugIn: original.notes !== undefined,
  };
}

/** Puts what the plain formulas rest on below the sheet, each block with a name that goes along when rows move; returns the names. */
function writeWorkings(sheet: Excel.Worksheet, changes: readonly CellChange[]): ReadonlyMap<WorkingBlock, string> {
  const blocks = [...new Set(changes.flatMap(({ workings }) => workings))];
  return new Map(
    blocks.map((block, index): [WorkingBlock, string] => {
      const name = `${workingsName}${index + 1}`;
      writeBlock(sheet, block, name);
      return [block, name];
    }),
  );
}

function writeBlock(sheet: Excel.Worksheet, { range, contents }: WorkingBlock, name: string): void {
  const cells = sheet.getRange(range);
  cells.formulas = contents.map((row) => [...row]);
  cells.format.font.color = styles.workings.color;
  cells.format.font.size = styles.workings.size;
  sheet.names.add(name, cells);
}

/** The comparison below the sheet, and on a batch sheet what it says at the top. */
function writeStill(sheet: Excel.Worksheet, { used }: Original, { block, says, changed }: NonNullable<UnplugPlan["still"]>): void {
  writeBlock(sheet, block, stillName);
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  if (cellAt(used.values as unknown[][], corner, position(sheetKindAt).row, position(sheetKindAt).column) === sheetKind) {
    const line = sheet.getRange(sheetKindAt);
    line.formulas = [[says]];
    line.format.wrapText = true;
    const warning = sheet.getRange(sheetKindAt).conditionalFormats.add("Custom").custom;
    warning.rule.formula = `=${changed}`;
    warning.format.fill.color = "#F2D58A";
    warning.format.font.color = "#3A2A00";
    sheet.names.add(stillLineName, line);
  } else {
    const { from, to } = blockOf(block.range);
    sheet.getRange(address(from.row, to.column)).formulas = [[says]];
  }
}

/** Stands for a step that stays with the brewer. */
const keptBack = "(a step of the brewer's own)";

/**
 * What a brewer typed into a batch sheet stays behind where it begins with "private", also as ="private …". Empty words
 * instead of clearing, which a cell that begins a merged one would refuse.
 */
function leavePrivateCells(sheet: Excel.Worksheet, { used }: Original, steps: string | undefined): void {
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  const stepsAt = steps === undefined ? undefined : blockOf(steps);
  // A step without words would be none, and the clock would lose its minutes.
  const isStep = (row: number, column: number): boolean =>
    stepsAt !== undefined && column === stepsAt.from.column && row >= stepsAt.from.row && row <= stepsAt.to.row;
  for (const [row, cells] of (used.formulas as unknown[][]).entries()) {
    for (const [column, content] of cells.entries()) {
      const at = { row: corner.row + row, column: corner.column + column };
      if (isPrivate(content)) sheet.getRange(address(at.row, at.column)).values = [[isStep(at.row, at.column) ? keptBack : ""]];
    }
  }
}

/** Removes private notes and adds ours; a note of the brewer's own in such a cell is kept in it. Returns how many were private. */
function writeNotes(
  sheet: Excel.Worksheet,
  places: Copy["notePlaces"],
  changes: readonly CellChange[],
  named: ReadonlyMap<WorkingBlock, string>,
): number {
  const existing = new Map(places.map(({ range, content }) => [localAddress(range.address).split(":")[0] ?? "", content]));
  let removed = 0;
  for (const [cell, content] of existing) {
    if (!isPrivate(content)) continue;
    sheet.notes.getItem(cell).delete();
    removed += 1;
  }
  for (const { cell, block, contents, formula, reason, workings } of changes) {
    const before = existing.get(cell);
    const kept = before === undefined || isPrivate(before) ? undefined : before;
    const { from, to } = blockOf(block);
    const wholeBlock = `${address(from.row, from.column)}:${address(to.row, to.column)}`;
    const text = noteText(
      {
        block: wholeBlock,
        formula,
        marks: contents.flat().map(fingerprint),
        ...(workings.length > 0 && { workings: workings.map((one) => named.get(one) ?? "") }),
        ...(reason !== undefined && { still: true }),
        ...(kept === undefined ? {} : { note: kept }),
      },
      reason,
    );
    if (kept === undefined) sheet.notes.add(cell, text);
    else sheet.notes.getItem(cell).content = text;
  }
  return removed;
}
