import { cellText } from "../../grid/words/cell-text";
import { columnLetters } from "../../grid/plan/addresses";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import { tastedLines } from "../../batch/fields/tasting";
import { mostMarks } from "./score-sheet-plan";

export const tastingMark = "gylebook_tasting";
export const tastingVersion = 1;
/** More beers than that nobody tastes one after the other and still judges the last as the first (common practice). */
export const mostBeers = 12;
export const mostTasters = 40;

/** A beer that is tasted blind. */
export interface BlindBeer {
  readonly code: number;
  readonly beer: string;
  readonly member: string;
}

export interface BlindTasting {
  readonly sheetName: string;
  /** Tells this tasting's score sheets from another's. */
  readonly id: string;
  readonly paper: "a4" | "letter";
  readonly beers: readonly BlindBeer[];
  readonly tasters: readonly string[];
}

/** Rows in which scores stand, some of them for whoever comes unannounced. */
const roomFor = (tasters: number): number => Math.min(mostTasters, Math.max(8, tasters + 2));
const firstRow = 6;
/** The ranking needs so many columns, however few beers there are. */
const fewestColumns = 9;

/** Codes and scores, what they say by GYLE.TASTE.AGREE, the ranking, and, on a page of its own, the key. */
export function planTasting({ sheetName, id, paper, beers, tasters }: BlindTasting): SheetPlan {
  const b = new SheetBuilder();
  const last = columnLetters(Math.max(beers.length + 1, fewestColumns));
  const letters = beers.map((_, index) => columnLetters(index + 2));
  const [from, to] = [letters[0] ?? "B", letters.at(-1) ?? "B"];
  const lastRow = firstRow + roomFor(tasters.length) - 1;
  const across = (row: number): string => `$${from}$${row}:$${to}$${row}`;

  b.height(28);
  b.put("A", "Blind tasting", { style: "title", mergeTo: "D" });
  b.put("F", "Gylebook tasting sheet", { style: "hint", mergeTo: last });
  b.put(
    "A",
    "Keep this sheet to yourself until every score is in: it knows which beer is which. Score sheets: Share, Blind tasting.",
    { style: "hint", mergeTo: last },
    2,
  );

  section(b, 4, "1  Scores", `Sum of ${tastedLines.length} marks, ${tastedLines.length} to ${mostMarks}; a row for each taster`, last);
  b.put("A", "Taster", { style: "heading" }, firstRow - 1);
  for (const [index, { code }] of beers.entries())
    b.put(letters[index] ?? "", code, { style: "headingRight", format: "whole" }, firstRow - 1);
  for (let row = firstRow; row <= lastRow; row += 1) {
    b.put("A", cellText(tasters[row - firstRow] ?? ""), { style: "inputText" }, row);
    for (const letter of letters) b.put(letter, "", { style: "input", format: "whole" }, row);
  }
  b.between(`${from}${firstRow}:${to}${lastRow}`, [tastedLines.length, mostMarks]);
  b.name("tasting_codes", `${from}${firstRow - 1}:${to}${firstRow - 1}`);
  b.name("tasting_tasters", `A${firstRow}:A${lastRow}`);
  b.name("tasting_scores", `${from}${firstRow}:${to}${lastRow}`);

  // What the scores say. The seven rows of the answer stand under the codes, so that each rank sum is under its beer.
  const mean = lastRow + 1;
  b.put("A", "Mean", { style: "label" }, mean);
  for (const letter of letters) {
    const own = `${letter}${firstRow}:${letter}${lastRow}`;
    b.put(letter, `=IF(COUNT(${own})=0,"",AVERAGE(${own}))`, { style: "result", format: "one" }, mean);
  }
  const head = mean + 2;
  section(b, head, "2  What they say", "1 for each taster who put a beer first, 2 for second: the smallest sum wins", last);
  const answer = head + 1;
  const [verdict, sums, , chance] = [answer, answer + 1, answer + 2, answer + 3];
  const least = answer + 6;
  b.put("A", `=GYLE.TASTE.AGREE(${from}${firstRow}:${to}${lastRow})`, { style: "label", spillsTo: `${to}${least}` }, answer);
  for (let row = answer; row <= least; row += 1) {
    const format = row === sums || row === chance || row === least ? "one" : row === answer + 5 ? "whole" : "two";
    if (row > answer) b.put("A", "", { style: "label" }, row);
    for (const letter of letters)
      b.put(letter, "", { style: row === sums ? "keyResult" : row === verdict ? "message" : "result", format }, row);
  }
  // The verdict's words take two lines in a column of figures.
  b.height(30, verdict);
  const words = least + 1;
  b.put(
    "A",
    `=IF(B${verdict}="","No taster has scored every beer yet.",IF(B${verdict}="difference shown","The tasters agree more than chance would have it: beers whose rank sums are more than "&FIXED(B${least},1)&" apart differ.",IF(B${verdict}="too few tasters","Even if so few tasters agreed in everything it could be chance: the order is theirs, no more.","The order could be chance ("&FIXED(B${chance},0)&" % of drawn orders are as clear): call no beer the better on this evening.")))`,
    { style: "message", mergeTo: last },
    words,
  );
  b.height(30, words);
  // Beers with the same sum share their place, and are listed in the order of the columns.
  const keys = words + 1;
  for (const letter of letters) {
    const own = `${letter}${sums}`;
    const listed = `COUNTIF(${across(sums)},"<"&${own})+COUNTIF($${from}${sums}:${own},${own})`;
    b.put(letter, `=IF(ISNUMBER(${own}),${listed},"")`, { style: "workings", format: "whole" }, keys);
  }
  b.put("A", "listed as", { style: "workings" }, keys);

  const ranking = keys + 2;
  section(b, ranking, "3  Ranking", "By the tasters who scored every beer", last);
  for (const [letter, heading, mergeTo, right] of [
    ["A", "Place", undefined, true],
    ["B", "Code", undefined, true],
    ["C", "Beer", "E", false],
    ["F", "By", "G", false],
    ["H", "Rank sum", undefined, true],
    ["I", "Mean, all", undefined, true],
  ] as const)
    b.put(letter, heading, { style: right ? "headingRight" : "heading", ...(mergeTo && { mergeTo }) }, ranking + 1);
  const key = ranking + 2 + beers.length + 1;
  const keyRows = (letter: string): string => `$${letter}$${key + 2}:$${letter}$${key + 1 + beers.length}`;
  for (let place = 1; place <= beers.length; place += 1) {
    const row = ranking + 1 + place;
    const column = `MATCH(${place},${across(keys)},0)`;
    const of = (what: string): string => `=IF(COUNT(${across(keys)})=0,"",INDEX(${what},${column}))`;
    b.put("A", `=IF(H${row}="","",COUNTIF(${across(sums)},"<"&H${row})+1)`, { style: "keyResult", format: "whole" }, row);
    b.put("B", of(across(firstRow - 1)), { style: "keyResult", format: "whole" }, row);
    b.put("C", of(keyRows("B")), { style: "keyText", format: "text", mergeTo: "E" }, row);
    b.put("F", of(keyRows("E")), { style: "resultText", format: "text", mergeTo: "G" }, row);
    b.put("H", of(across(sums)), { style: "result", format: "one" }, row);
    b.put("I", of(across(mean)), { style: "result", format: "one" }, row);
  }
  b.name("tasting_ranking", `A${ranking + 2}:I${ranking + 1 + beers.length}`);

  section(b, key, "4  Key", "Which code is which beer: a page of its own, for whoever pours", last);
  for (const [letter, heading, mergeTo] of [
    ["A", "Code", undefined],
    ["B", "Beer", "D"],
    ["E", "By", "G"],
  ] as const)
    b.put(letter, heading, { style: "heading", ...(mergeTo && { mergeTo }) }, key + 1);
  for (const [index, { code, beer, member }] of beers.entries()) {
    const row = key + 2 + index;
    b.put("A", code, { style: "keyText", format: "whole" }, row);
    b.put("B", cellText(beer), { style: "inputText", format: "text", mergeTo: "D" }, row);
    b.put("E", cellText(member), { style: "inputText", format: "text", mergeTo: "G" }, row);
  }
  const end = key + 1 + beers.length;
  b.put("A", "Mark of this tasting:", { style: "workings" }, end + 2);
  b.put("C", cellText(id), { style: "workings", name: "tasting_id" }, end + 2);
  b.put("E", tastingVersion, { style: "workings", name: tastingMark }, end + 2);
  b.put("G", paper, { style: "workings", name: "tasting_paper" }, end + 2);
  return b.build(
    sheetName,
    [18, ...Array.from({ length: Math.max(beers.length, fewestColumns - 1) }, () => 11)],
    {
      area: `A1:${last}${end}`,
      paper,
      ...(beers.length > 8 && { landscape: true }),
      breaksBeforeRow: [key],
      footer: `${sheetName} · page &P of &N`,
    },
    firstRow - 1,
  );
}

function section(b: SheetBuilder, row: number, title: string, hint: string, last: string): void {
  b.height(18, row);
  b.put("A", title, { style: "section", mergeTo: "B" }, row);
  b.put("C", hint, { style: "sectionHint", mergeTo: last }, row);
}
