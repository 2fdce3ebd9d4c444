import { isReferenceNode } from "@borgar/fx";
import { block, type Block, type Position } from "../plan/addresses";
import type { NamedCells } from "../read/named-cells";
import { nodesOf, parsed } from "./parse";
import { referenceOf } from "./references";

/** A formula on a sheet, and where it looks on that sheet. */
interface Formula extends Position {
  readonly looksAt: readonly Block[];
  /** Its answer may fill cells below and beside it. */
  readonly maySpill: boolean;
}

/** The widest answers of ours have five columns. */
const widestSpill = 5;

export const isFormula = (content: unknown): content is string => typeof content === "string" && content.startsWith("=");
const meets = (one: Block, other: Block): boolean =>
  one.from.row <= other.to.row && one.to.row >= other.from.row && one.from.column <= other.to.column && one.to.column >= other.from.column;
const isOne = ({ from, to }: Block): boolean => from.row === to.row && from.column === to.column;
export const placeKey = (row: number, column: number): number => row * 16384 + column;

/** Which formulas of a sheet look at which cells: built once for a sheet as it was read, however often it is asked "what if". */
export class FormulaMap {
  private readonly formulas: readonly Formula[];
  private readonly byColumn = new Map<number, Formula[]>();

  constructor(private readonly sheet: NamedCells) {
    this.formulas = [...sheet.filled()].flatMap(({ address, formula }): Formula[] => {
      if (!isFormula(formula)) return [];
      const looksAt = this.blocksOf(formula);
      const maySpill = /gyle[._]/i.test(formula) && looksAt.some((one) => !isOne(one));
      return [{ ...block(address).from, looksAt, maySpill }];
    });
    for (const formula of this.formulas) {
      const column = this.byColumn.get(formula.column);
      if (column) column.push(formula);
      else this.byColumn.set(formula.column, [formula]);
    }
    for (const column of this.byColumn.values()) column.sort((one, other) => one.row - other.row);
  }

  /** The formulas that follow, over however many others, from what stands in some cells. */
  following(changed: readonly Block[]): ReadonlySet<number> {
    const stale = new Set<number>();
    let left = this.formulas;
    for (let reached = [...changed]; reached.length > 0 && left.length > 0;) {
      const met: Formula[] = [];
      left = left.filter((formula) => {
        // An answer that has no room stays without it.
        const follows =
          this.sheet.at(formula.row, formula.column) !== "#SPILL!" &&
          formula.looksAt.some((one) => reached.some((cell) => meets(one, cell)));
        if (follows) met.push(formula);
        return !follows;
      });
      for (const { row, column } of met) stale.add(placeKey(row, column));
      reached = met.map((formula) => this.reachOf(formula));
    }
    return stale;
  }

  /** The formula whose answer may spill into a cell that has none of its own: the nearest one above, in its column or a little to the left. */
  anchorOf(row: number, column: number): Position | undefined {
    for (let left = column; left > column - widestSpill; left -= 1) {
      const above = this.byColumn.get(left)?.findLast((formula) => formula.row < row || (formula.row === row && left < column));
      if (above?.maySpill) return above;
    }
    return undefined;
  }

  /** A formula's cell, and where its answer may spill: down to the next formula of its column. */
  private reachOf({ row, column, maySpill }: Formula): Block {
    const from = { row, column };
    if (!maySpill) return { from, to: from };
    const next = this.byColumn.get(column)?.find((formula) => formula.row > row);
    return { from, to: { row: (next?.row ?? 1_048_577) - 1, column: column + widestSpill - 1 } };
  }

  /** Where a formula looks, names followed. */
  private blocksOf(formula: string): Block[] {
    const tree = parsed(formula);
    if (!tree) return [];
    return [...nodesOf(tree)].flatMap((node): Block[] => {
      const reference = isReferenceNode(node) ? referenceOf(node.kind, node.value) : undefined;
      if (!reference || reference.kind === "table") return [];
      if (reference.sheet !== undefined && reference.sheet.toLowerCase() !== this.sheet.sheetName.toLowerCase()) return [];
      if (reference.kind === "cells") return [block(reference.range)];
      return this.sheet.has(reference.name) ? [block(this.sheet.range(reference.name))] : [];
    });
  }
}

const known = new WeakMap<NamedCells, FormulaMap>();

export function formulaMap(sheet: NamedCells): FormulaMap {
  const found = known.get(sheet) ?? new FormulaMap(sheet);
  known.set(sheet, found);
  return found;
}
