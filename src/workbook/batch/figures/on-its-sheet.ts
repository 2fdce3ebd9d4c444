import { workedOut, type LaidOver } from "../../grid/evaluate/laid-over";
import { position } from "../../grid/plan/addresses";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import type { BatchContents } from "../contents";
import type { BatchCell } from "../fields/cells";
import { planBatch } from "../sheet/plan";

/** A batch on its own sheet, worked out by the sheet's formulas: there is no second writing of them. */
interface OnItsSheet {
  readonly plan: SheetPlan;
  readonly cells: LaidOver;
}

const known = new WeakMap<BatchContents, OnItsSheet>();

function onItsSheet(batch: BatchContents): OnItsSheet {
  const found = known.get(batch);
  if (found) return found;
  const plan = planBatch(batch);
  const made = { plan, cells: workedOut(plan) };
  known.set(batch, made);
  return made;
}

/** A named figure; undefined where the sheet would be blank or show an error. */
export function figure(batch: BatchContents, name: string): number | undefined {
  const cell = onItsSheet(batch).cells.value(name);
  return typeof cell === "number" ? cell : undefined;
}

export function shownWords(batch: BatchContents, name: string): string {
  const cell = onItsSheet(batch).cells.value(name);
  return typeof cell === "string" ? cell : "";
}

/** Several of them, each by a name of its own. */
export const figures = <Key extends string>(
  batch: BatchContents,
  cells: Readonly<Record<Key, BatchCell>>,
): Readonly<Record<Key, number | undefined>> =>
  Object.fromEntries(Object.entries<BatchCell>(cells).map(([key, name]) => [key, figure(batch, name)])) as Record<Key, number | undefined>;

/** The first so many figures of an answer that spills down from the formula that begins like this. */
export function figuresDown(batch: BatchContents, formula: string, count: number): (number | undefined)[] {
  const { plan, cells } = onItsSheet(batch);
  const start = plan.cells.find(({ content }) => typeof content === "string" && content.startsWith(formula));
  if (!start) return [];
  const { row, column } = position(start.address);
  return Array.from({ length: count }, (_, index) => {
    const cell = cells.at(row + index, column);
    return typeof cell === "number" ? cell : undefined;
  });
}
