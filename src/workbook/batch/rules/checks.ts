import { linesPoints, type SheetBuilder } from "../../grid/plan/sheet-builder";
import type { BlockKey } from "../fields/blocks";
import type { Method } from "../contents";
import type { UnitSystem } from "../../../functions/quantities";
import { section } from "../sheet/fields";
import type { ReadingRows } from "../sheet/readings";
import type { UnitWords } from "../unit-words";
import { beerTemperatureLine } from "./beer-temperature";
import { clockLine } from "./clock";
import { courseLine } from "./course";
import { figuresLine } from "./figures";
import { finishedLine } from "./finished";
import { hopsLine } from "./hops";
import { mashLine } from "./mash";
import { noGylebook } from "./no-gylebook";
import { originalGravityLine } from "./original-gravity";
import { pressureLine } from "./pressure";
import { roomLine } from "./room";
import { cannotBeChecked, messageOf, stateOf, type CheckLine } from "./rule";
import { steepingLine } from "./steeping";
import { volumesLine } from "./volumes";
import { text } from "./words";
import { yeastLine } from "./yeast";

/** Words that fit a line, in any spreadsheet program. */
export const charactersOfALine = 104;

/** Cells without a name that the checks look at. */
export interface WatchedCells {
  /** First cells of answers that spill: the water budget, the bitterness of each hop, the timeline. */
  readonly budget: string;
  readonly shares: string;
  readonly timeline: string;
  readonly readings: ReadingRows;
}

/** What a sheet is of, and where its watched cells stand. */
export interface CheckedSheet {
  readonly units: UnitSystem;
  readonly method: Method;
  readonly words: UnitWords;
  readonly watched: WatchedCells;
  /** What it has beyond the usual sheet. */
  readonly blocks: readonly BlockKey[];
}

/** The lines in their printed order. Without our functions no line judges, least of all a figure of the brewer's. */
export const checkLines = (checked: CheckedSheet): readonly CheckLine[] =>
  ownLines(checked).map((line) => ({ ...line, steps: [noGylebook(checked.units), ...line.steps] }));

const ownLines = ({ units, method, words, watched, blocks }: CheckedSheet): readonly CheckLine[] => [
  originalGravityLine(units, words, method),
  volumesLine(words, method, watched.budget),
  roomLine(units, words, method, blocks),
  method === "extract" ? steepingLine(units, words) : mashLine(units, words, blocks),
  hopsLine(watched.shares),
  yeastLine(blocks),
  beerTemperatureLine(units, words),
  courseLine(watched.readings),
  finishedLine,
  pressureLine(units, blocks),
  clockLine(units, words, watched.timeline, blocks),
  figuresLine(units, words, method),
];

/** 10. Checks: what looks wrong or unsafe on this sheet, in words. A check that cannot be made says so. */
export function checks(b: SheetBuilder, checked: CheckedSheet): void {
  section(b, 10, "Checks", "What looks wrong or unsafe on this sheet");
  const first = b.row;
  for (const line of checkLines(checked)) {
    putLine(b, line);
    b.row += 1;
  }
  const last = b.row - 1;
  b.name("check_states", `B${first}:B${last}`);
  b.name("check_texts", `C${first}:C${last}`);
  lightUp(b, first, last);
}

/** A line that stands by itself, at the end of what it is about. */
export function putCheck(b: SheetBuilder, line: CheckLine, name: string): void {
  putLine(b, line);
  b.name(name, `B${b.row}:C${b.row}`);
  lightUp(b, b.row, b.row);
}

function putLine(b: SheetBuilder, { label, weight, steps, lines }: CheckLine): void {
  b.put("A", label, { style: "label" });
  b.put("C", `=IFERROR(${messageOf(steps)},${text(cannotBeChecked)})`, { style: "message", format: "text", mergeTo: "I" });
  b.height(linesPoints(lines ?? 2));
  b.put("B", `=${stateOf(`C${b.row}`, weight)}`, { style: "state" });
}

function lightUp(b: SheetBuilder, first: number, last: number): void {
  b.highlight({ range: `B${first}:B${last}`, formula: `=$B${first}="stop"`, fill: "#7A1F1F", color: "#FFFFFF", bold: true });
  b.highlight({ range: `B${first}:B${last}`, formula: `=$B${first}="look"`, fill: "#F2D58A", color: "#3A2A00", bold: true });
}
