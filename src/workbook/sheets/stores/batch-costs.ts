import type { BatchCell } from "../../batch/fields/cells";
import type { BatchSheet } from "../../batch/read/batch-sheets";
import { address } from "../../grid/plan/addresses";
import type { CellValue } from "../../grid/read/named-cells";
import { rangeChange, type RangeChange } from "../../grid/write/change-ranges";
import { needKey } from "./needs";
import type { Draw } from "./stock";

type Drawn = Pick<Draw, "kind" | "name" | "lot" | "amount" | "cost">;

/** A cell of a batch sheet for a cost, and what was drawn for it had cost. */
interface CostCell {
  readonly row: number;
  readonly column: number;
  readonly cost: number;
}

/**
 * What was drawn for a batch, in the cost cells of its own lines: those that are empty. Where a line has a cost of the
 * brewer's own, that one stays.
 */
export function costsOnBatch(
  batch: BatchSheet,
  draws: readonly Drawn[],
): { readonly changes: readonly RangeChange[]; readonly own: number } {
  const cells = costCells(batch, draws);
  const empty = cells.filter(({ row, column }) => batch.formulaAt(row, column) === "");
  return { changes: empty.map((cell) => change(batch, cell, cell.cost)), own: cells.length - empty.length };
}

/** The costs that a draw wrote and that still stand there, emptied. */
export const costsEmptied = (batch: BatchSheet, draws: readonly Drawn[]): readonly RangeChange[] =>
  costCells(batch, draws)
    .filter(({ row, column, cost }) => isAbout(batch.formulaAt(row, column), cost))
    .map((cell) => change(batch, cell, ""));

const isAbout = (cell: CellValue, cost: number): boolean => typeof cell === "number" && Math.abs(cell - cost) < 1e-6 * Math.max(1, cost);

const change = (batch: BatchSheet, { row, column }: CostCell, content: number | ""): RangeChange =>
  rangeChange(batch, address(row, column), [[content]]);

/** Lines of one thing share its cost by their masses. What has no price in the stores has no cost here. */
function costCells(batch: BatchSheet, draws: readonly Drawn[]): CostCell[] {
  /** What the stores call it; a batch may name the lot with the thing: "Cascade 2025". */
  const thing = (kind: Drawn["kind"], name: string): string | undefined =>
    draws.find((draw) =>
      [draw.name, `${draw.name} ${draw.lot}`].some((called) => needKey({ kind: draw.kind, name: called }) === needKey({ kind, name })),
    )?.name;
  const costOf = (kind: Drawn["kind"], name: string | undefined): number | undefined => {
    const found = draws.filter((draw) => name !== undefined && needKey(draw) === needKey({ kind, name }));
    return found.length === 0 || found.some(({ cost }) => cost === undefined)
      ? undefined
      : found.reduce((sum, { cost = 0 }) => sum + cost, 0);
  };
  const placed: string[] = [];
  const table = (kind: "malt" | "hops", area: BatchCell, nameColumn: number, massColumn: number, costName: BatchCell): CostCell[] => {
    if (!batch.has(area) || !batch.has(costName)) return [];
    const { from, to } = batch.area(area);
    const lines = Array.from({ length: to.row - from.row + 1 }, (_, index) => from.row + index).flatMap((row) => {
      const mass = batch.at(row, from.column + massColumn);
      const called = thing(kind, String(batch.at(row, from.column + nameColumn)));
      return called !== undefined && typeof mass === "number" && mass > 0 ? [{ row, called, mass }] : [];
    });
    placed.push(...lines.map(({ called }) => needKey({ kind, name: called })));
    return lines.flatMap(({ row, called, mass }) => {
      const whole = lines.filter((line) => line.called === called).reduce((sum, line) => sum + line.mass, 0);
      const cost = costOf(kind, called);
      return cost === undefined ? [] : [{ row, column: batch.area(costName).from.column, cost: (cost * mass) / whole }];
    });
  };
  const single = (cell: BatchCell, cost: number | undefined): CostCell[] =>
    cost === undefined || !batch.has(cell) ? [] : [{ ...batch.area(cell).from, cost }];
  const lines = [
    ...table("malt", "malt", -1, 0, "malt_cost"),
    ...table("hops", "hop_plan", 0, 1, "hop_cost"),
    ...single("yeast_cost", costOf("yeast", thing("yeast", batch.text("yeast_name")))),
  ];
  // Caps, and what goes into a starter: things that no line of the sheet names.
  const onLines = new Set([...placed, needKey({ kind: "yeast", name: thing("yeast", batch.text("yeast_name")) ?? "" })]);
  const others = draws.filter((draw) => !onLines.has(needKey(draw)));
  const known = others.every(({ cost }) => cost !== undefined);
  return [
    ...lines,
    ...(others.length > 0 && known
      ? single(
          "other_cost",
          others.reduce((sum, { cost = 0 }) => sum + cost, 0),
        )
      : []),
  ];
}
