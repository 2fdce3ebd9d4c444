import type { NamedCells } from "../../grid/read/named-cells";
import { blockKeys, checkName } from "../../batch/fields/blocks";
import { planVersion } from "../../batch/describe/plan-version";
import { batchMark, isBatchSheet, type BatchSheet } from "../../batch/read/batch-sheets";
import { isFork, nothingFound, type Rule, type Step } from "../../batch/rules/rule";
import { laidOver, printedLines, saidBy, spokenOf } from "../../batch/rules/what-it-says";
import { OnlyTheSheetKnows } from "../../grid/evaluate/evaluate";
import type { LaidOver } from "../../grid/evaluate/laid-over";
import { block, isWithin, position } from "../../grid/plan/addresses";
import type { CheckExplanation, SpokenCell } from "./explanation";
import { showCells } from "./show-value";

/** Names of the printed checks, whose cells are explained by the rules behind them. */
export const checkNames: readonly string[] = ["check_states", "check_texts", ...blockKeys.map((key) => checkName(key))];

/** Why a line of the sheet's own checks says what it says; undefined for a cell that is none of them, and on a sheet of another plan than ours. */
export function explainCheck(sheet: NamedCells, address: string): CheckExplanation | undefined {
  if (!isBatchSheet(sheet) || Number(sheet.value(batchMark)) !== planVersion) return undefined;
  const at = position(address);
  if (!checkNames.some((name) => sheet.has(name) && isWithin(block(sheet.range(name)), at))) return undefined;
  const line = printedLines(sheet).find(({ row }) => row === at.row)?.line;
  if (!line) return undefined;
  const world = laidOver(sheet);
  try {
    const [said] = saidBy(world, line);
    const names = said?.cells ?? [...new Set(rulesOf(line.steps).flatMap(spokenOf))];
    return {
      label: line.label,
      rule: said?.rule ?? "",
      state: said?.state ?? nothingFound,
      words: said?.words ?? "",
      remedy: said?.remedy.trim() ?? "",
      cells: names.flatMap((name) => spoken(sheet, world, name)),
    };
  } catch (problem) {
    if (problem instanceof OnlyTheSheetKnows) return undefined;
    throw problem;
  }
}

const rulesOf = (steps: readonly Step[]): Rule[] =>
  steps.flatMap((step) => (isFork(step) ? [...rulesOf(step.then), ...rulesOf(step.otherwise)] : [step]));

/** A cell that a rule speaks of, with what the sheet calls it and what it shows. */
function spoken(sheet: NamedCells, world: LaidOver, name: string): SpokenCell[] {
  const isName = sheet.has(name);
  const range = isName ? sheet.range(name) : name.replaceAll("$", "");
  if (!/^[A-Z]+\d+(:[A-Z]+\d+)?$/i.test(range)) return [];
  const shown = showCells(world.ask(`=${name}`), /_on$/.test(name) ? "date" : undefined);
  return [{ name: isName ? name : range, label: labelBeside(sheet, range), place: { sheet: sheet.sheetName, range }, shown }];
}

/** The nearest words to the left in its row, or above it where it heads a column. */
function labelBeside(sheet: BatchSheet, range: string): string {
  const { from, to } = block(range);
  const isWords = (row: number, column: number): string => {
    const cell = sheet.at(row, column);
    return typeof cell === "string" && /\p{L}{2}/u.test(cell) && !String(sheet.formulaAt(row, column)).startsWith("=") ? cell : "";
  };
  if (to.row > from.row) return isWords(from.row - 1, from.column);
  for (let column = from.column - 1; column >= Math.max(1, from.column - 3); column -= 1) {
    const words = isWords(from.row, column);
    if (words !== "") return words;
  }
  return "";
}
