import { block, type Block } from "../workbook/grid/plan/addresses";
import type { SheetPlan } from "../workbook/grid/plan/sheet-plan";

/**
 * What a sheet asks of Excel: each level of GYLE calls that wait for one another costs about half a second there,
 * while calls side by side cost next to nothing.
 */
export interface SheetFigures {
  readonly calls: number;
  readonly deepestChain: number;
}

const call = /\bGYLE\.[A-Z.]+\(/g;

/** Counts GYLE calls and follows names and addresses from formula to formula. Spills are followed by their first cell. */
export function sheetFigures(plan: SheetPlan): SheetFigures {
  const formulas = new Map(
    plan.cells
      .filter(({ content }) => typeof content === "string" && content.startsWith("="))
      .map(({ address, content }) => [address, String(content)]),
  );
  const names = new Map(plan.names.map(({ name, range }) => [name, range]));
  const calls = [...formulas.values()].reduce((sum, formula) => sum + (formula.match(call)?.length ?? 0), 0);
  const depths = new Map<string, number>();
  const depthOf = (address: string): number => {
    const known = depths.get(address);
    if (known !== undefined) return known;
    depths.set(address, 0);
    const formula = formulas.get(address) ?? "";
    const before = Math.max(
      0,
      ...precedents(formula, names)
        .flatMap((range) => cellsIn(range, formulas, plan))
        .map(depthOf),
    );
    const depth = before + nesting(formula);
    depths.set(address, depth);
    return depth;
  };
  return { calls, deepestChain: Math.max(0, ...[...formulas.keys()].map(depthOf)) };
}

function precedents(formula: string, names: ReadonlyMap<string, string>): string[] {
  const words = formula.replace(/"[^"]*"/g, "").match(/\$?[A-Za-z_]+[\w.]*\$?\d*(?::\$?[A-Z]+\$?\d+)?/g) ?? [];
  return words.flatMap((word) => {
    const plain = word.replaceAll("$", "");
    return names.get(plain) ?? (/^[A-Z]{1,3}\d+(:[A-Z]{1,3}\d+)?$/.test(plain) ? plain : []);
  });
}

/** Formula cells in a range, and those whose answer spills into it. */
function cellsIn(range: string, formulas: ReadonlyMap<string, string>, { cells }: SheetPlan): string[] {
  const wanted = block(range);
  return cells
    .filter(({ address, spillsTo }) => formulas.has(address) && overlap(wanted, block(spillsTo ? `${address}:${spillsTo}` : address)))
    .map(({ address }) => address);
}

const overlap = (a: Block, b: Block): boolean =>
  a.from.row <= b.to.row && b.from.row <= a.to.row && a.from.column <= b.to.column && b.from.column <= a.to.column;

/** Deepest nesting of GYLE calls within one formula. */
function nesting(formula: string): number {
  let deepest = 0;
  const open: boolean[] = [];
  for (let index = 0; index < formula.length; index += 1) {
    if (formula[index] === "(") {
      open.push(/GYLE\.[A-Z.]+$/.test(formula.slice(0, index)));
      deepest = Math.max(deepest, open.filter(Boolean).length);
    } else if (formula[index] === ")") open.pop();
  }
  return deepest;
}
