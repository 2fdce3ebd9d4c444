import { rowHeightPoints, SheetBuilder } from "../../grid/plan/sheet-builder";
import type { NumberFormat, SheetPlan } from "../../grid/plan/sheet-plan";
import type { BatchInWorkbook } from "../batches-in-workbook";
import { beyond, onOnePage, outgrown, packed, pageCells, sectionHead, shown } from "./page-cells";

/** A: a box to tick; B: what to do; C: why; D: what to beware of. */
const columnWidths = [4, 33, 58, 39];

/** Letters that fit into a line of a column for each of its width's: words are wrapped whole. */
const fitting = 0.92;

/**
 * One page for somebody who learns: the day's steps with their reasons, room for what is measured, and three guesses that the batch
 * sheet answers afterwards.
 */
export function planLesson(batch: BatchInWorkbook, pageName: string): SheetPlan {
  const page = pageCells(batch);
  const { named, words } = page;
  const b = new SheetBuilder();
  const section = (title: string, hint: string) => sectionHead(b, title, "B", hint, ["C", "D"]);

  b.height(28);
  b.put("A", `="Brewing lesson: "&${named("batch_name")}`, { style: "title", mergeTo: "D" });
  b.row += 1;
  b.height(20);
  b.put("A", "Name", { style: "label", mergeTo: "B" });
  b.put("C", "", { style: "inputText" });
  b.put("D", "Date:", { style: "inputText" });
  b.row += 1;
  b.gap();

  section("The day's steps, and why", "Tick what is done");
  const steps = packed(b, page, "steps", 0, beyond(columnWidths.length, 0), b.row);
  for (let index = 1; index <= steps.rows; index += 1) {
    b.height(rowHeightPoints * steps.lines(index, [0, 4, 3], (column) => columnWidths[1 + column]! * fitting));
    b.put("A", `=IF(B${b.row}="","","☐")`, { style: "label" });
    b.put("B", steps.cell(index, 0), { style: "message" });
    b.put("C", steps.cell(index, 4), { style: "message" });
    b.put("D", steps.cell(index, 3), { style: "message" });
    b.row += 1;
  }
  outgrown(b, [steps], "A", "D");
  b.gap();

  section("Measure and write down", "Read a hydrometer at eye level, and note the temperature of the sample");
  const measure = (label: string, planned: string | undefined, format: NumberFormat, unit: string) => {
    b.height(17);
    b.put("A", `${label}${unit === "" ? "" : `, ${unit}`}`, { style: "label", mergeTo: "B" });
    b.put("C", planned === undefined ? "" : shown(named(planned)), { style: "resultText", format });
    b.put("D", "", { style: "inputText" });
    b.row += 1;
  };
  b.put("C", "Planned", { style: "heading" });
  b.put("D", "Measured", { style: "heading" });
  b.row += 1;
  measure("Water collected", "water_collect", "two", words.volume);
  measure("Original gravity", "og_plan", "gravity", "");
  measure("Volume in the fermenter", "volume", "two", words.volume);
  measure("Temperature when the yeast goes in", "pitch_temperature", "whole", words.temperature);
  measure("Final gravity, twice, a day apart", "fg_plan", "gravity", "");
  b.gap();

  section("Three guesses", "Guess first; the batch sheet answers when it has its readings");
  b.put("C", "My guess, and why", { style: "heading" });
  b.put("D", "What the batch sheet says", { style: "heading" });
  b.row += 1;
  const guess = (question: string, answer: string, format: NumberFormat) => {
    b.height(22);
    b.put("A", question, { style: "hintWords", mergeTo: "B" });
    b.put("C", "", { style: "inputText" });
    b.put("D", answer, { style: "resultText", format });
    b.row += 1;
  };
  const answered = (name: string): string => `=IF(N(${named(name)})=0,"after the reading",${named(name)})`;
  guess("1. What will the original gravity be?", answered("og_reached"), "gravity");
  guess("2. How many minutes will chilling take?", `=IF(N(${named("chill_minutes")})=0,"",${named("chill_minutes")})`, "whole");
  guess("3. How strong will it be, in % of alcohol?", answered("abv_reached"), "one");
  b.height(30);
  b.put(
    "A",
    "Boiling wort, steam and wet floors scald; cleaners burn; sealed bottles can burst; CO2 suffocates in low, closed rooms. Adults brew and taste; whoever drives does not taste. Local codes and the makers' labels come first.",
    { style: "hintWords", mergeTo: "D" },
  );

  return onOnePage(b, page, pageName, columnWidths, `A1:D${b.row}`);
}
