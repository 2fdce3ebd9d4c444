import { cellText } from "../../grid/words/cell-text";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import { scoreLimits, tastedLines } from "../../batch/fields/tasting";
import { scoreLineOpening } from "./score-line";

export const scoresMark = "gylebook_scores";
export const scoresVersion = 1;

const [fewest, most] = scoreLimits;
export const mostMarks = tastedLines.length * most;

export interface ScoreSheet {
  readonly sheetName: string;
  readonly tastingName: string;
  readonly tastingId: string;
  readonly paper: "a4" | "letter";
  readonly taster: string;
  /** Codes in the order in which this taster gets the beers. */
  readonly codes: readonly number[];
}

const firstRow = 7;

/**
 * One taster's sheet, in plain formulas, so that it works without Gylebook: on paper, filled in here, or in a workbook of its own and
 * sent back as a line of text.
 */
export function planScoreSheet({ sheetName, tastingName, tastingId, paper, taster, codes }: ScoreSheet): SheetPlan {
  const b = new SheetBuilder();
  const [sum, words] = ["G", "H"];
  const marks = ["B", "C", "D", "E", "F"].slice(0, tastedLines.length);
  const lastRow = firstRow + codes.length - 1;
  b.height(28);
  b.put("A", "Score sheet", { style: "title", mergeTo: "D" });
  b.put("E", cellText(tastingName), { style: "hint", mergeTo: words });
  b.put(
    "A",
    "Taste in the order of the rows, with water between, and write before anybody speaks. Five for a beer you would pour for anybody of legal age, one for the drain; none before you drive.",
    { style: "hintWords", mergeTo: words },
    2,
  );
  b.height(30, 2);
  b.put("A", "Taster", { style: "label" }, 4);
  b.put("B", cellText(taster), { style: "inputText", mergeTo: "D", name: "score_taster" }, 4);
  b.put("A", "Code", { style: "heading" }, firstRow - 1);
  for (const [index, { label }] of tastedLines.entries()) b.put(marks[index] ?? "", label, { style: "headingRight" }, firstRow - 1);
  b.put(sum, "Sum", { style: "headingRight" }, firstRow - 1);
  b.put(words, "In words", { style: "heading" }, firstRow - 1);
  for (const [index, code] of codes.entries()) {
    const row = firstRow + index;
    b.height(26, row);
    b.put("A", code, { style: "keyText", format: "whole" }, row);
    for (const letter of marks) b.put(letter, "", { style: "input", format: "whole" }, row);
    const own = `${marks[0]}${row}:${marks.at(-1)}${row}`;
    b.put(sum, `=IF(COUNT(${own})<${tastedLines.length},"",SUM(${own}))`, { style: "keyResult", format: "whole" }, row);
    b.put(words, "", { style: "inputWords" }, row);
  }
  b.between(`${marks[0]}${firstRow}:${marks.at(-1)}${lastRow}`, [fewest, most]);
  b.name("score_codes", `A${firstRow}:A${lastRow}`);
  b.name("score_sums", `${sum}${firstRow}:${sum}${lastRow}`);
  const line = lastRow + 3;
  b.put(
    "A",
    "To send your scores back, copy the text of the cell below into a message to whoever runs the tasting.",
    { style: "hint", mergeTo: words },
    line - 1,
  );
  const scores = codes.map((_, index) => `"|"&A${firstRow + index}&":"&${sum}${firstRow + index}`).join("&");
  b.put(
    "A",
    `="${scoreLineOpening}|"&${marks[0]}${line + 1}&"|"&B4&${scores}`,
    { style: "message", mergeTo: words, name: "score_line" },
    line,
  );
  b.height(30, line);
  b.put("A", "Mark", { style: "workings" }, line + 1);
  b.put("B", cellText(tastingId), { style: "workings", name: "score_tasting" }, line + 1);
  b.put("D", scoresVersion, { style: "workings", name: scoresMark }, line + 1);
  return b.build(
    sheetName,
    [11, ...marks.slice(1).map(() => 12), 20, 8, 40],
    { area: `A1:${words}${line}`, paper, landscape: true, onePage: true, breaksBeforeRow: [], footer: `${sheetName} · page &P of &N` },
    firstRow - 1,
  );
}
