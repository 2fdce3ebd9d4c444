import { address } from "../../grid/plan/addresses";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { sheetMarks } from "../../batch/read/batch-marks";
import type { LearnedKey } from "./kit-rows";
import { takePlace } from "./kits-on-sheet";

/** Sets whether new batches on a kit go by what was learned of it: the cell under "Take learned". Four `context.sync()`. */
export async function takeLearned(context: Excel.RequestContext, take: boolean, kitNumber: number, key: LearnedKey): Promise<void> {
  const marks = await sheetMarks(context, [`kit_${kitNumber}_take`]);
  const found = marks.find(({ ranges }) => ranges.size > 0);
  const range = found?.ranges.get(`kit_${kitNumber}_take`);
  if (!found || !range) return;
  const loaded = loadSheet(found.sheet);
  await context.sync();
  const sheet = namedCells(loaded);
  const place = takePlace(sheet, kitNumber, key);
  if (!place) return;
  const cell = address(place.row, place.column);
  await changeRanges(context, [rangeChange(sheet, cell, [[take ? "yes" : "no"]])], { place: `${cell} on “${found.name}”` });
}
