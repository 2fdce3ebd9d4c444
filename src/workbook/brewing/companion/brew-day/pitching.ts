import type { Filled } from "../../../batch/contents";
import { figureDoubt, outsideLimits } from "../../../batch/derived/figure-doubts";
import { mainArea, tableOffsets } from "../../../batch/derived/table-places";
import { batchFields } from "../../../batch/fields";
import { unitBeside } from "../../../batch/derived/sheet-lines";
import { madeFor } from "../../../batch/read/batch-contents";
import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { ofTheWarmth } from "../../../batch/rules/beer-temperature";
import { newlySaid } from "../../../batch/rules/what-it-says";
import { firstEmptyRow } from "../reading/add-reading";
import type { DayLine } from "./day-lines";

const { readings, yeast } = batchFields;

/** Whether the yeast goes in with this line, by the sheet's own count of its lines. */
export const isPitching = (sheet: BatchSheet, { row, kind }: DayLine): boolean =>
  kind === "step" && sheet.knownNumber("pitch_line") === row + 1;

/**
 * What speaks against giving the yeast to wort as warm as this: the sheet's own rules about the plan's temperature and about the
 * beer's, asked before the yeast is in rather than after. A temperature that nobody has measured is a doubt, too.
 */
export function pitchingDoubts(sheet: BatchSheet, warmth: Filled<number>): readonly string[] {
  const on = madeFor(sheet);
  const planned = sheet.number("pitch_temperature");
  if (warmth === "")
    return [
      `How warm is the wort? Too warm, it harms the yeast${planned === "" ? "" : `; this sheet pitches at ${planned} ${unitBeside(yeast.fields.pitchTemperature, on)}`}.`,
    ];
  const slip = outsideLimits(yeast.fields.pitchTemperature, warmth, on) ?? figureDoubt(yeast.fields.pitchTemperature, warmth, on);
  if (slip !== undefined) return [slip];
  const row = firstEmptyRow(sheet);
  const asBeer =
    row === undefined ? [] : [{ name: mainArea(readings).name, row, column: tableOffsets(readings).beerTemperature, content: warmth }];
  return newlySaid(sheet, [{ name: "pitch_temperature", content: warmth }, ...asBeer], ["beer-temperature"], ofTheWarmth).map(
    ({ words }) => words,
  );
}

/** How it is kept, among the notes of the batch. */
export const pitchedWords = (sheet: BatchSheet, warmth: number): string =>
  `Wort at ${warmth} ${unitBeside(yeast.fields.pitchTemperature, madeFor(sheet))} as the yeast went in.`;
