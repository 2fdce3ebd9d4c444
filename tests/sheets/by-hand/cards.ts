import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { block, position } from "../../../src/workbook/grid/plan/addresses";
import type { SheetPlan } from "../../../src/workbook/grid/plan/sheet-plan";
import {
  allGrainBatch,
  blankBatch,
  extractBatch,
  misreadExtract,
  misreadGrain,
  partialMashBatch,
  poorMash,
  unmeasuredBatch,
  unmeasuredGrain,
  unmixedExtract,
  workingBatch,
} from "./batches";

/** One figure of a card, with the sum by which a person came to it. */
export interface HandLine {
  readonly name: string;
  /** A number; words that the cell begins with; or nothing, where the cell must be blank. */
  readonly value: string;
  /** A number, or a share of the value in per cent; nothing beside words. */
  readonly tolerance: string;
  readonly "why so much": string;
  readonly sum: string;
  readonly source: string;
}

export interface HandCard {
  readonly title: string;
  readonly contents: () => BatchContents;
  readonly lines: readonly HandLine[];
}

const columns = ["name", "value", "tolerance", "why so much", "sum", "source"];

function table(file: string): HandLine[] {
  const records: string[][] = parse(readFileSync(new URL(`${file}.csv`, import.meta.url), "utf8"), { skip_empty_lines: true });
  if (records[0]?.join() !== columns.join()) throw new Error(`${file}: the columns must be ${columns.join()}`);
  return records
    .slice(1)
    .map((cells) => Object.fromEntries(columns.map((column, index) => [column, cells[index] ?? ""])) as unknown as HandLine);
}

/** Those that state every number; the others state what must be there, or must not be there yet. */
export const wholeCards: readonly string[] = ["extract-us", "all-grain-metric", "partial-mash-keg"];

export const handCards = (): readonly HandCard[] => [
  { title: "extract-us", contents: extractBatch, lines: table("extract-us") },
  { title: "all-grain-metric", contents: allGrainBatch, lines: table("all-grain-metric") },
  { title: "partial-mash-keg", contents: partialMashBatch, lines: table("partial-mash-keg") },
  { title: "working-metric", contents: workingBatch, lines: table("working-metric") },
  { title: "unmeasured-us", contents: unmeasuredBatch, lines: table("unmeasured-us") },
  { title: "misread-us", contents: misreadExtract, lines: table("misread-us") },
  { title: "misread-metric", contents: misreadGrain, lines: table("misread-metric") },
  { title: "unmixed-us", contents: unmixedExtract, lines: table("unmixed-us") },
  { title: "poor-mash-metric", contents: poorMash, lines: table("poor-mash-metric") },
  { title: "unmeasured-metric", contents: unmeasuredGrain, lines: table("unmeasured-metric") },
  { title: "blank-metric", contents: blankBatch, lines: table("blank-metric") },
];

/** Columns that have no name of their own, beside one that has. */
const columnsBeside: Readonly<Record<string, readonly [name: string, column: string]>> = {
  share_of_malt: ["malt", "G"],
  ibu_each: ["hops", "G"],
  gravities: ["readings", "F"],
  eaten: ["readings", "G"],
  alcohol: ["readings", "H"],
};

export type Shows = (cell: string) => unknown;

/** The cell that a line of a table speaks of; lines of the clock are found by the words they begin with. */
export function cellOfLine(plan: SheetPlan, name: string, shows: Shows): string {
  const rangeOf = (wanted: string): string => {
    const found = plan.names.find((candidate) => candidate.name === wanted);
    if (!found) throw new Error(`the sheet has no name ${wanted}`);
    return found.range;
  };
  const [kind = "", ...rest] = name.split(" ");
  const beside = columnsBeside[kind];
  if (beside && rest.length > 0) return `${beside[1]}${block(rangeOf(beside[0])).from.row + Number(rest[0]) - 1}`;
  if (rest.length === 0) return rangeOf(name).split(":")[0] ?? "";
  const { from, to } = block(rangeOf("happened"));
  for (let row = from.row; row <= to.row; row += 1) {
    if (String(shows(`A${row}`) ?? "").startsWith(rest.join(" "))) return `${kind === "boil_minute" ? "D" : "C"}${row}`;
  }
  throw new Error(`the clock has no line that begins with "${rest.join(" ")}"`);
}

/** Minutes from a line of the clock to the one below. */
const minutesTo = (time: number, shows: Shows, cell: string): number => (Number(shows(`C${Number(cell.slice(1)) + 1}`)) - time) * 1440;

/** What differs between the paper and the sheet, in words; nothing where they agree. */
export function difference(plan: SheetPlan, line: HandLine, shows: Shows): string | undefined {
  const shown = shows(cellOfLine(plan, line.name, shows));
  const says = (words: string): string => `${line.name}: the sheet shows ${String(shown)}, the paper ${words} (${line.sum})`;
  if (line.value === "") return shown === null || shown === "" || shown === undefined ? undefined : says("nothing");
  const wanted = Number(line.value);
  if (Number.isNaN(wanted)) return typeof shown === "string" && shown.startsWith(line.value) ? undefined : says(`"${line.value}"`);
  if (typeof shown !== "number") return says(line.value);
  const room = line.tolerance.endsWith("%") ? (Math.abs(wanted) * Number(line.tolerance.slice(0, -1))) / 100 : Number(line.tolerance);
  const found = line.name.startsWith("takes ") ? minutesTo(shown, shows, cellOfLine(plan, line.name, shows)) : shown;
  return Math.abs(found - wanted) <= room + 1e-9 ? undefined : says(`${line.value} ± ${line.tolerance}`);
}

/** Calculated numbers that no table states, and why. Names, or what a cell without a name stands in. */
export const leftOut: Readonly<Record<string, string>> = {
  timeline: "the printed clock shows the same lines, which stand in the table",
  clock: "its lines stand in the tables by their words: clock, boil_minute and takes",
  step_minutes: "minutes of the usual steps: the figures that they point to stand in the tables",
  forecast: "a fit: tests/log draws its truth from other families",
  forecast_day: "a fit: tests/log draws its truth from other families",
  forecast_spread: "a fit: tests/log draws its truth from other families",
  end_expected: "a fit: tests/log draws its truth from other families",
  curve: "a fit, drawn",
  pitch_line: "the number of a line, from which pitched_at is looked up",
  ends_at: "the gravity expected, or the newest one: both stand in the tables",
  chart: "days and readings laid out for the drawing",
  chart_days: "days laid out for the drawing",
  chart_from: "days laid out for the drawing",
  chart_to: "days laid out for the drawing",
  log_times: "the readings once more, for the fit",
  log_gravities: "the readings once more, for the fit",
};

/** Every cell that calculates: by its name, by its column beside a name, or by what it is part of. */
export function nameOfCell(plan: SheetPlan, cell: string): string {
  const exact = plan.names.find(({ range }) => range === cell);
  if (exact) return exact.name;
  const { row, column } = position(cell);
  const letter = cell.replace(/\d/g, "");
  const rows = (name: string) => block(plan.names.find((candidate) => candidate.name === name)?.range ?? "A1:A1");
  for (const [kind, [name, of]] of Object.entries(columnsBeside)) {
    const { from, to } = rows(name);
    if (letter === of && row >= from.row && row <= to.row) return `${kind} ${row - from.row + 1}`;
  }
  const inside = (name: string) => {
    const { from, to } = rows(name);
    return row >= from.row && row <= to.row;
  };
  if (column >= position("W1").column) return "chart";
  if (inside("happened") && ["C", "D"].includes(letter)) return "clock";
  if (inside("happened") && letter === "M") return "step_minutes";
  return plan.names.find(({ range }) => range.split(":")[0] === cell)?.name ?? cell;
}
