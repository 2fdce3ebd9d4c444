import { address, block } from "../../grid/plan/addresses";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { sheetMarks } from "../../batch/read/batch-marks";
import { learnedRows, type LearnedKey } from "./kit-rows";

/** Sets whether new batches on a kit go by what was learned of it: the cell under "Take learned". Four `context.sync()`. */
export async function takeLearned(context: Excel.RequestContext, take: boolean, kitNumber: number, key: LearnedKey): Promise<void> {
  const marks = await sheetMarks(context, [`kit_${kitNumber}_take`]);
  const found = marks.find(({ ranges }) => ranges.size > 0);
  const range = found?.ranges.get(`kit_${kitNumber}_take`);
  if (!found || !range) return;
  const loaded = loadSheet(found.sheet);
  await context.sync();
  const { from } = block(range);
  const cell = address(from.row + learnedRows.findIndex((row) => row.key === key), from.column);
  await changeRanges(context, [rangeChange(namedCells(loaded), cell, [[take ? "yes" : "no"]])], { place: `${cell} on “${found.name}”` });
}
