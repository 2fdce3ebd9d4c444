import type { Cell } from "../../src/workbook/grid/evaluate/cells";
import { workedOut } from "../../src/workbook/grid/evaluate/laid-over";
import { position } from "../../src/workbook/grid/plan/addresses";
import type { CellPlan, SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";

/**
 * A planned sheet worked out in Node, cell by cell as it is asked for, in milliseconds: for tests that change one
 * formula after the other. It knows only what planned sheets use; `by-hand.test.ts` holds it against the grid's engine.
 */
export interface PaperGrid {
  at(cell: string): Cell;
}

/** @param changed formulas or values in the place of planned ones, by their cell */
export function paperGrid(plan: SheetPlan, changed: ReadonlyMap<string, string | number> = new Map()): PaperGrid {
  const cells = new Map<string, CellPlan>(plan.cells.map((cell) => [cell.address, cell]));
  for (const [address, content] of changed)
    cells.set(address, { ...(cells.get(address) ?? { style: "input" }), address, content } as CellPlan);
  const sheet = workedOut({ ...plan, cells: [...cells.values()] });
  return {
    at: (cell) => {
      const { row, column } = position(cell);
      return sheet.at(row, column);
    },
  };
}
