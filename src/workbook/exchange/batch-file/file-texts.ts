import { opensLikeFormula } from "../../grid/words/cell-text";
import type { BatchContents } from "../../batch/contents";
import { mapTexts } from "../../batch/derived/map-texts";
import { batchFields } from "../../batch/fields";

/*
 * In a batch file no words begin with = + - or @, since somebody may paste them into a spreadsheet, where they would
 * become formulas. Words that do begin so (a note "- more crystal next time") get an apostrophe in front, as one types it in
 * Excel; on the way in it is taken off, and the writer puts it on again for the cell.
 */
export const textsForFile = (batch: BatchContents): BatchContents =>
  mapTexts(batchFields, batch, (text) => (opensLikeFormula(text) ? `'${text}` : text));
export const textsFromFile = (batch: BatchContents): BatchContents =>
  mapTexts(batchFields, batch, (text) => (text.startsWith("'") ? text.slice(1) : text));
