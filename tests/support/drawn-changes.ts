import { address, block } from "../../src/workbook/grid/plan/addresses";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";

/** What somebody types into a sheet, by address. */
export type TypedCells = ReadonlyMap<string, string | number>;

/**
 * One to three changes of the input cells of a planned sheet: amounts a little larger or smaller, another word of those offered, a
 * cell emptied, a step or a hop more.
 */
export function drawnChange(plan: SheetPlan, uniform: () => number): TypedCells {
  const typed = new Map<string, string | number>();
  const wanted = 1 + Math.floor(3 * uniform());
  while (typed.size < wanted) {
    const kind = uniform();
    if (kind < 0.12) newStep(plan, typed, uniform);
    else if (kind < 0.24) newHop(plan, typed, uniform);
    else oneCell(plan, typed, uniform);
  }
  return typed;
}

const pick = <T>(list: readonly T[], uniform: () => number): T => list[Math.floor(list.length * uniform())]!;

function oneCell(plan: SheetPlan, typed: Map<string, string | number>, uniform: () => number): void {
  const inputs = plan.cells.filter(({ style, content }) => (style === "input" || style === "inputText") && content !== "");
  const { address: cell, content, format } = pick(inputs, uniform);
  // What the units are is fixed when the sheet is made.
  if (plan.names.some(({ name, range }) => name === "units" && range === cell)) return;
  if (typeof content === "number") {
    const isMoment = format === "date" || format === "dateTime" || format === "time";
    const factor = 0.8 + 0.45 * uniform();
    typed.set(
      cell,
      uniform() < 0.06
        ? ""
        : isMoment
          ? content + (format === "time" ? 0.1 * uniform() : Math.round(4 * uniform()) - 2)
          : format === "gravity"
            ? Number((content + 0.008 * (uniform() - 0.5)).toFixed(3))
            : Number((content * factor).toPrecision(3)),
    );
    return;
  }
  const list = plan.validations.find(
    ({ kind, range }) => kind === "list" && block(range).from.column === block(cell).from.column && within(range, cell),
  );
  if (list?.kind === "list") typed.set(cell, pick(list.choices, uniform));
  else if (content.startsWith("=")) typed.set(cell, "Something else is to be done");
}

function within(range: string, cell: string): boolean {
  const { from, to } = block(range);
  const { row } = block(cell).from;
  return row >= from.row && row <= to.row;
}

/** The first free row of a named table, and its first column. */
function freeRow(plan: SheetPlan, name: string): { row: number; column: number } | undefined {
  const range = plan.names.find((one) => one.name === name)?.range;
  if (range === undefined) return undefined;
  const { from, to } = block(range);
  const filled = new Set(plan.cells.filter(({ content }) => content !== "").map(({ address: cell }) => cell));
  for (let row = from.row; row <= to.row; row += 1) if (!filled.has(address(row, from.column))) return { row, column: from.column };
  return undefined;
}

function newStep(plan: SheetPlan, typed: Map<string, string | number>, uniform: () => number): void {
  const free = freeRow(plan, "steps");
  if (!free) return;
  const part = pick(["before", "boil", "after"], uniform);
  ["One thing more", part, Math.round(70 * uniform()), "Take care."].forEach((content, index) =>
    typed.set(address(free.row, free.column + index), content),
  );
}

function newHop(plan: SheetPlan, typed: Map<string, string | number>, uniform: () => number): void {
  const free = freeRow(plan, "hop_plan");
  if (!free) return;
  const minutes = pick<string | number>([0, 5, 12.5, 60, 75, "first wort", "stand", "dry"], uniform);
  ["One hop more", Number((1 + 30 * uniform()).toFixed(2)), 6.2, minutes].forEach((content, index) =>
    typed.set(address(free.row, free.column + index), content),
  );
}

/** Cells of some names, and all that is worked out from them: what stands still with them. */
export function madeFrom(plan: SheetPlan, names: readonly string[]): ReadonlySet<string> {
  const places = new Map(plan.names.map(({ name, range }) => [name, range]));
  const found = new Set(names.flatMap((name) => cellsOfRange(places.get(name) ?? "A1")));
  for (let before = -1; before !== found.size;) {
    before = found.size;
    const named = [...places].filter(([, range]) => cellsOfRange(range).some((cell) => found.has(cell))).map(([name]) => name);
    const speaks = new RegExp(`\\b(${named.join("|")})\\b`);
    for (const { address: cell, content } of plan.cells)
      if (typeof content === "string" && content.startsWith("=") && speaks.test(content)) found.add(cell);
  }
  return found;
}

export function cellsOfRange(range: string): string[] {
  const { from, to } = block(range);
  return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
    Array.from({ length: to.column - from.column + 1 }, (__, column) => address(from.row + row, from.column + column)),
  ).flat();
}
