import { quantity, type UnitSystem } from "../../../functions/quantities";
import { usualKit } from "../../batch/new-batch";
import { linesPoints, SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat, SheetPlan } from "../../grid/plan/sheet-plan";
import { fixedRows, handMeasured, learnedAmongFixed, learnedRows, quantityOf, type LearnedKey, type LearnedRow } from "./kit-rows";

/** Marks the sheet, and tells which plan it follows. */
export const kitMark = "gylebook_kit";
export const kitVersion = 1;
export const mostKits = 3;
const readingRows = 12;
/** So many letters stand in the last column in one line. */
const lineOfWords = 100;
const widths = [28.5, 10.5, 8, 8, 8, 13, 8, 8, 9, 83];

export interface HandReading {
  readonly kit: string;
  readonly day: number;
  readonly what: keyof typeof handMeasured;
  readonly value: number;
  readonly remark: string;
}

export interface KitOptions {
  readonly sheetName: string;
  readonly units: UnitSystem;
  readonly kitNames: readonly string[];
  readonly readings?: readonly HandReading[];
}

/** The usual value of a figure, in the units of the sheet. A kit that mashes wins more than one that only steeps. */
export function typicalValue(key: LearnedKey, units: UnitSystem): number {
  if (key === "hydrometerOffset") return 0;
  if (key === "grainEfficiencyPercent") return 70;
  return usualKit[units][key];
}

/** The kits of a brewer, one block each: what is typical, what their own batches told, what they say themselves. */
export function planKit({ sheetName, units, kitNames, readings = [] }: KitOptions): SheetPlan {
  const b = new SheetBuilder();
  b.height(28);
  b.put("A", "Kit", { style: "title", mergeTo: "E" });
  b.put("L", "Plan of this sheet:", { style: "hint" });
  b.put("M", kitVersion, { style: "hint", name: kitMark });
  b.row = 2;
  b.put(
    "A",
    "A new batch can start from a kit. What you write under “own” counts; else what was learned, if you take it; else what is typical.",
    { style: "hint", mergeTo: "J" },
  );
  b.put("L", "Units of this sheet:", { style: "hint" });
  b.put("M", units, { style: "hint", name: "kit_units" });
  b.row = 3;
  for (let index = 0; index < mostKits; index += 1) kitBlock(b, index + 1, kitNames[index] ?? "", units);
  handReadings(b, readings, units);
  const last = b.row - 1;
  const paper = units === "us" ? "letter" : "a4";
  /** A page for each kit; what was measured by hand goes with the last one. */
  const kitStarts = Array.from({ length: mostKits - 1 }, (_, index) => 3 + (index + 1) * blockRows);
  return b.build(
    sheetName,
    [...widths, 3, 18, 12],
    {
      area: `A1:J${last}`,
      paper,
      landscape: true,
      breaksBeforeRow: kitStarts,
      footer: `${sheetName} · page &P of &N`,
    },
    2,
  );
}

const blockRows = learnedRows.length + fixedRows.length + 3;

function kitBlock(b: SheetBuilder, number: number, name: string, units: UnitSystem): void {
  b.height(18);
  b.put("A", `${number}  Kit`, { style: "section" });
  b.put("B", name, { style: "inputText", mergeTo: "E", name: `kit_${number}_name` });
  b.put(
    "F",
    number === 1
      ? "Batches that name no kit count as brewed on this one"
      : "Give it a name to use it: batches are learned from by that name",
    { style: "sectionHint", mergeTo: "J" },
  );
  b.row += 1;
  const headings = [
    ["A", "What"],
    ["B", "Typical"],
    ["C", "Learned"],
    ["D", "±"],
    ["E", "Batches"],
    ["F", "Take learned"],
    ["G", "Own"],
    ["H", "Goes by"],
    ["I", "Unit"],
    ["J", "How it is learned"],
  ] as const;
  for (const [letter, text] of headings) b.put(letter, text, { style: "BCDEGH".includes(letter) ? "headingRight" : "heading" });
  b.row += 1;
  const first = b.row;
  for (const row of learnedRows) learnedLine(b, row, units);
  for (const { key, label, format } of fixedRows) {
    const learned = learnedAmongFixed.find((row) => row.key === key);
    if (learned) learnedLine(b, learned, units);
    else {
      line(b, label, usualKit[units][key], format, unitOf(key, units));
      b.put("H", goesByOwn(b.row), { style: "keyResult", format });
      b.row += 1;
    }
  }
  b.name(`kit_${number}_learned`, `C${first}:E${first + learnedRows.length - 1}`);
  b.name(`kit_${number}_take`, `F${first}:F${first + learnedRows.length - 1}`);
  b.name(`kit_${number}_used`, `H${first}:H${b.row - 1}`);
  b.gap();
}

/** What a figure goes by that its own batches tell, and one that is only written. */
export const goesByLearned = (row: number): string =>
  `=IF(ISNUMBER(G${row}),G${row},IF(AND(F${row}="yes",ISNUMBER(C${row})),C${row},B${row}))`;
export const goesByOwn = (row: number): string => `=IF(ISNUMBER(G${row}),G${row},B${row})`;

function learnedLine(b: SheetBuilder, { key, label, format, how }: LearnedRow, units: UnitSystem): void {
  line(b, label, typicalValue(key, units), format, unitOf(key, units));
  b.put("C", "", { style: "result", format });
  b.put("D", "", { style: "result", format: format === "whole" ? "one" : format });
  b.put("E", "", { style: "result", format: "whole" });
  b.put("F", "no", { style: "input", choices: ["yes", "no"] });
  b.put("H", goesByLearned(b.row), { style: "keyResult", format });
  b.put("J", how, { style: "hintWords" });
  if (how.length > lineOfWords) b.height(linesPoints(2));
  b.row += 1;
}

function line(b: SheetBuilder, label: string, typical: CellContent, format: NumberFormat, unit: string): void {
  b.put("A", label, { style: "label" });
  b.put("B", typical, { style: "result", format });
  b.put("G", "", { style: "input", format });
  b.put("I", unit, { style: "unit" });
}

const unitOf = (key: Parameters<typeof quantityOf>[0], units: UnitSystem): string => quantity(quantityOf(key)).unit[units];

function handReadings(b: SheetBuilder, readings: readonly HandReading[], units: UnitSystem): void {
  b.height(18);
  b.put("A", `${mostKits + 1}  Measured by hand`, { style: "section", mergeTo: "C" });
  b.put(
    "D",
    `Amounts in ${quantity("volume").unit[units]}; boil-off: volumes before and after an hour's boil, both cold; plain water reads 1.000 on a true hydrometer`,
    { style: "sectionHint", mergeTo: "J" },
  );
  b.row += 1;
  const heading = b.row;
  for (const [letter, text] of [
    ["A", "Kit"],
    ["B", "Day"],
    ["C", "Value"],
    ["D", "What"],
  ] as const)
    b.put(letter, text, { style: letter === "A" || letter === "D" ? "heading" : "headingRight", ...(letter === "D" && { mergeTo: "F" }) });
  b.put("G", "Remark", { style: "heading", mergeTo: "J" });
  for (let index = 0; index < readingRows; index += 1) {
    b.row += 1;
    const reading = readings[index];
    b.put("A", reading?.kit ?? "", { style: "inputText", format: "text" });
    b.put("B", reading?.day ?? "", { style: "input", format: "date" });
    b.put("C", reading?.value ?? "", { style: "input", format: reading?.what === "hydrometer in plain water" ? "gravity" : "general" });
    b.put("D", reading?.what ?? "", { style: "inputText", format: "text", mergeTo: "F", choices: Object.keys(handMeasured) });
    b.put("G", reading?.remark ?? "", { style: "inputText", format: "text", mergeTo: "J" });
  }
  b.name("kit_readings", `A${heading + 1}:D${heading + readingRows}`);
  b.row += 1;
}
