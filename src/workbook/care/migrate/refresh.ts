import type { BatchCell } from "../../batch/fields/cells";
import type { NamedCells } from "../../grid/read/named-cells";
import type { BatchSheet } from "../../batch/read/batch-sheets";
import type { BatchContents, StepLine } from "../../batch/contents";
import { planBatch } from "../../batch/sheet/plan";
import { standing } from "../../batch/read/standing";
import { newBatchId } from "../../batch/batch-id";
import { moved, placeMap } from "../check/place-map";
import { address, block, columnNumber, isWithin, position } from "../../grid/plan/addresses";
import type { CellContent, CellPlan, SheetPlan } from "../../grid/plan/sheet-plan";
import { batchContents } from "../../batch/read/batch-contents";
import { namesSince } from "./new-names";
import { isNews, isOurs, markOf } from "./our-words";

/** A cell of today's plan as it goes into an older sheet, where that sheet has it. */
export interface Written extends CellPlan {
  /** What stood there: nothing, or words and formulas of a former plan. */
  readonly was: CellContent;
}

export interface Refreshed {
  readonly names: readonly { readonly name: string; readonly cell: string; readonly label: string }[];
  readonly cells: readonly Written[];
  /** Cells with a formula or words of the brewer's own where today's plan has changed its own: they stay. */
  readonly kept: readonly string[];
  /** Why the steps of the day stay as they are. */
  readonly stepsStay?: string;
  /** Cells in which a word may be typed now, not a number alone. */
  readonly freed: readonly string[];
}

/** First column of the chart's figures, which come with the chart. */
const chartColumn = columnNumber("W");

/**
 * What brings a sheet of an older plan to today's: the cells that it lacks, and today's words and formulas in the place of
 * those of its own plan that nobody has touched. Rows that were put in are followed by the names.
 */
export function refreshed(sheet: BatchSheet, version: number): Refreshed {
  const read = batchContents(sheet);
  const steps = stepsOf(sheet, read);
  const contents: BatchContents = {
    ...read,
    id: read.id || newBatchId(),
    wort: { ...read.wort, collected: collectedBefore(sheet, version, read) },
    ...(steps.replaced && { steps: undefined }),
  };
  const plan = planBatch(contents, standing(sheet));
  const place = placeMap(plan, sheet);
  const added = additions(sheet, plan, place, namesSince(version));
  const kept: string[] = [];
  const cells: Written[] = [...added.cells];
  const own = new Set(cells.map((cell) => cell.address));
  const stepsBlock = plannedSteps(plan);
  const hasCurve = sheet.has("curve");
  for (const planned of plan.cells) {
    const at = position(planned.address);
    if (typeof planned.content !== "string" || planned.content === "" || (at.column >= chartColumn && !hasCurve)) continue;
    if (isWithin(stepsBlock, at) || planned.style.startsWith("input")) continue;
    const where = place(planned.address);
    const content = where === undefined ? undefined : moved(planned.content, place);
    if (where === undefined || own.has(where)) continue;
    const { row, column } = position(where);
    const was = sheet.formulaAt(row, column) as CellContent;
    if (content === undefined ? !isNews(planned.content) : was === content || (typeof was === "string" && markOf(was) === markOf(content)))
      continue;
    if (content !== undefined && (was === "" ? isNews(planned.content) && !isTaken(sheet, row, column) : isOurs(was)))
      cells.push({ ...planned, address: where, content, was });
    else if (isNews(planned.content)) kept.push(where);
  }
  if (steps.replaced) cells.push(...rewrittenSteps(sheet, plan));
  const minutes = sheet.has("hop_minutes") ? [sheet.range("hop_minutes")] : [];
  return { names: added.names, cells, kept, freed: version < 3 ? minutes : [], ...(steps.stay !== undefined && { stepsStay: steps.stay }) };
}

/** A brew day that is over collected what its sheet said then: plan 3 says another figure. */
function collectedBefore(sheet: BatchSheet, version: number, { wort }: BatchContents): BatchContents["wort"]["collected"] {
  return version < 3 && wort.volume !== "" && sheet.has("water_collect") ? sheet.number("water_collect") : wort.collected;
}

/** Named cells that the plan has gained, each with the label on its left and the unit on its right; below everything where theirs are in use. */
function additions(
  sheet: BatchSheet,
  plan: SheetPlan,
  place: (planned: string) => string | undefined,
  wanted: readonly string[],
): Pick<Refreshed, "names" | "cells"> {
  const planned = new Map(plan.cells.map((cell) => [cell.address, cell]));
  const names: { name: string; cell: string; label: string }[] = [];
  const cells: Written[] = [];
  let nextRow = lastRow(sheet) + 2;
  for (const name of wanted) {
    const range = plan.names.find((one) => one.name === name)?.range;
    if (range === undefined) throw new Error(`no plan has a cell ${name}`);
    const beside = ([-1, 0, 1] as const).map((step) => planned.get(address(position(range).row, position(range).column + step)));
    const places = beside.map((cell) => (cell === undefined ? undefined : place(cell.address)));
    const isFree =
      places.every((where) => where === undefined || !isTaken(sheet, position(where).row, position(where).column)) &&
      places[1] !== undefined;
    const row = isFree ? undefined : nextRow++;
    beside.forEach((cell, index) => {
      if (cell === undefined || (cell.content === "" && index !== 1)) return;
      const where = row === undefined ? places[index]! : address(row, position(cell.address).column);
      if (index === 1) names.push({ name, cell: where, label: String(beside[0]?.content ?? name) });
      cells.push({
        ...cell,
        address: where,
        content: typeof cell.content === "string" ? (moved(cell.content, place) ?? cell.content) : cell.content,
        was: "",
      });
    });
  }
  return { names, cells };
}

/** Steps in our own former words give way to today's before the day begins; a day that was noted keeps its lines. */
function stepsOf(sheet: BatchSheet, read: BatchContents): { readonly replaced: boolean; readonly stay?: string } {
  if (read.steps === undefined) return { replaced: false };
  const ours = read.steps.every(({ what, caution, why }: StepLine) => [what, caution, why].every((words) => words === "" || isOurs(words)));
  if (!ours) return { replaced: false, stay: "they are in words of your own" };
  if (read.happened.length > 0) return { replaced: false, stay: "times are noted beside them" };
  const { steps: _, ...plain } = read;
  const fresh = planBatch(plain);
  const needs = (name: BatchCell): number =>
    fresh.names.filter((one) => one.name === name).map(({ range }) => block(range).to.row - block(range).from.row)[0] ?? 0;
  const has = (name: BatchCell): number => sheet.area(name).to.row - sheet.area(name).from.row;
  return needs("steps") > has("steps") || needs("happened") > has("happened")
    ? { replaced: false, stay: "the sheet has too few lines for today's" }
    : { replaced: true };
}

const plannedSteps = (plan: SheetPlan) => block(plan.names.find(({ name }) => name === "steps")?.range ?? "A1");

/** The whole step table: what today's steps leave over is emptied. */
function rewrittenSteps(sheet: BatchSheet, plan: SheetPlan): Written[] {
  const { from, to } = sheet.area("steps");
  const planned = plannedSteps(plan);
  const contents = new Map(plan.cells.map((cell) => [cell.address, cell]));
  const cells: Written[] = [];
  for (let row = from.row; row <= to.row; row += 1) {
    for (let column = from.column; column <= to.column; column += 1) {
      const where = address(row, column);
      const cell = contents.get(address(planned.from.row + row - from.row, planned.from.column + column - from.column));
      const was = sheet.formulaAt(row, column) as CellContent;
      const content = cell?.content ?? "";
      if (was !== content)
        cells.push({ address: where, style: cell?.style ?? "inputText", ...(cell?.format && { format: cell.format }), content, was });
    }
  }
  return cells;
}

/** Filled, or an empty cell with a name: that is somebody's all the same. */
function isTaken(sheet: NamedCells, row: number, column: number): boolean {
  return (
    sheet.formulaAt(row, column) !== "" ||
    sheet.at(row, column) !== "" ||
    sheet.names().some((name) => isWithin(sheet.area(name), { row, column }))
  );
}

function lastRow(sheet: NamedCells): number {
  let last = 1;
  for (const name of sheet.names()) last = Math.max(last, sheet.area(name).to.row);
  for (const { address: filled } of sheet.filled()) last = Math.max(last, block(filled).to.row);
  return last;
}
