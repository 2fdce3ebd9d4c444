import { expect, it } from "vitest";
import { laidOver } from "../../src/workbook/batch/rules/what-it-says";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { paperSheet } from "../support/paper-sheet";

const world = laidOver(paperSheet(firstExtractBatch()));

// Excel's documentation of TEXT functions: a truth joins as TRUE or FALSE.
it.each([
  ['=TRUE&""', "TRUE"],
  ["=LEFT(FALSE,3)", "FAL"],
  ['=SUBSTITUTE(TRUE,"T","t")', "tRUE"],
])("%s is %s, as it is for the spreadsheet", (formula, value) => {
  expect(world.ask(formula)).toEqual([[value]]);
});
