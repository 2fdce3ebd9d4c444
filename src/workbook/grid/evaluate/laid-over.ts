import { CellError } from "../../../functions/cell-error";
import { address, block, isWithin, type Block, type Position } from "../plan/addresses";
import type { SheetPlan } from "../plan/sheet-plan";
import { NamedCells, type CellValue } from "../read/named-cells";
import { cellOf, single, type Cell, type Cells } from "./cells";
import { evaluate, OnlyTheSheetKnows } from "./evaluate";
import { formulaMap, isFormula, placeKey } from "./formula-map";
import { parsed } from "./parse";
import type { World } from "./world";

/** Contents by address, "B7": what would be typed. "" empties a cell. */
export type Laid = ReadonlyMap<string, CellValue>;

export interface LaidOptions {
  /** What is not to be believed of the sheet: "changed" only what follows from the values laid over it, "all" where nothing was ever worked out. */
  readonly stale?: "changed" | "all";
  /** What a name stands for that the sheet does not have: a sheet of an older plan lacks some of today's. */
  readonly missing?: (name: string) => string | undefined;
  /** What a name stands for whatever the sheet has. */
  readonly instead?: (name: string) => string | undefined;
  /** Where answers spill; without it, it is told by the formulas above a cell. */
  readonly spills?: readonly Block[];
}

/**
 * A sheet as it would be with other values in some cells: "what would this cell show if that were typed?" Cells that do
 * not follow from those keep what they show; the others are worked out by the formulas that stand in them, when they are asked for.
 */
export class LaidOver implements World {
  readonly sheet: string;
  readonly row = 1;
  private readonly worked = new Map<string, Cells>();
  private stale: ReadonlySet<number> | undefined;
  private asItStands: LaidOver | undefined;

  constructor(
    readonly cellsOfSheet: NamedCells,
    private readonly laid: Laid = new Map(),
    private readonly options: LaidOptions = {},
  ) {
    this.sheet = cellsOfSheet.sheetName;
  }

  name(sheet: string, wanted: string): string | undefined {
    if (!this.isOwn(sheet)) return undefined;
    const instead = this.options.instead?.(wanted.toLowerCase());
    if (instead !== undefined) return instead;
    return this.cellsOfSheet.has(wanted) ? `=${this.cellsOfSheet.range(wanted)}` : this.options.missing?.(wanted);
  }

  cells(sheet: string, range: string): Cells {
    if (!this.isOwn(sheet)) throw new OnlyTheSheetKnows(sheet);
    if (range.endsWith("#")) {
      const { from } = block(range.slice(0, -1));
      return this.isStale(from.row, from.column) ? this.whole(from.row, from.column) : refuseSpill(range);
    }
    const { from, to } = block(range);
    return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
      Array.from({ length: to.column - from.column + 1 }, (_2, column) => this.at(from.row + row, from.column + column)),
    );
  }

  table(): undefined {
    return undefined;
  }

  /** @throws OnlyTheSheetKnows where it follows from what only the spreadsheet can work out */
  at(row: number, column: number): Cell {
    const laid = this.laid.get(address(row, column));
    if (laid !== undefined) return cellOf(laid, laid === "");
    const formula = this.cellsOfSheet.formulaAt(row, column);
    if (isFormula(formula)) return this.isStale(row, column) ? (this.whole(row, column)[0]?.[0] ?? null) : this.shown(row, column);
    const anchor = this.anchorOf(row, column);
    if (anchor && this.isStale(anchor.row, anchor.column)) {
      const spilled = this.whole(anchor.row, anchor.column)[row - anchor.row]?.[column - anchor.column];
      if (spilled !== undefined) return spilled;
      // What the answer filled before and does not reach any more is empty.
      if (this.formerly(anchor)[row - anchor.row]?.[column - anchor.column] !== undefined) return null;
    }
    return this.shown(row, column);
  }

  /** The first cell of a name, or of what it stands for. */
  value(name: string): Cell {
    return this.ask(name)[0]?.[0] ?? null;
  }

  /** A formula, as if it stood on the sheet. */
  ask(formula: string): Cells {
    const tree = parsed(formula);
    if (!tree) throw new OnlyTheSheetKnows(formula);
    return evaluate(tree, this);
  }

  private isOwn(sheet: string): boolean {
    return sheet.toLowerCase() === this.sheet.toLowerCase();
  }

  private shown(row: number, column: number): Cell {
    return cellOf(this.cellsOfSheet.at(row, column), this.cellsOfSheet.formulaAt(row, column) === "");
  }

  /** The answer of a formula with all that it spills. */
  private whole(row: number, column: number): Cells {
    const key = address(row, column);
    const found = this.worked.get(key);
    if (found) return found;
    const tree = parsed(String(this.cellsOfSheet.formulaAt(row, column)));
    if (!tree) throw new OnlyTheSheetKnows(key);
    this.worked.set(key, single(new CellError("#REF!", `${key} leads back to itself`)));
    try {
      const cells = evaluate(tree, this);
      this.worked.set(key, cells);
      return cells;
    } catch (problem) {
      this.worked.delete(key);
      throw problem;
    }
  }

  /** The answer of a formula as the sheet stands, to know what it has spilled into. */
  private formerly({ row, column }: Position): Cells {
    if (this.options.stale === "all") return [];
    this.asItStands ??= new LaidOver(this.cellsOfSheet, new Map(), this.options);
    return this.asItStands.whole(row, column);
  }

  /** Whether a cell's formula follows, over however many others, from what was laid over. */
  private isStale(row: number, column: number): boolean {
    return this.options.stale === "all" || (this.stale ??= this.following()).has(placeKey(row, column));
  }

  private following(): ReadonlySet<number> {
    return this.laid.size === 0 ? new Set() : formulaMap(this.cellsOfSheet).following([...this.laid.keys()].map(block));
  }

  /** The formula whose answer may spill into a cell that has none of its own. */
  private anchorOf(row: number, column: number): Position | undefined {
    const { spills, stale } = this.options;
    if (!spills) return stale !== "all" && this.laid.size === 0 ? undefined : formulaMap(this.cellsOfSheet).anchorOf(row, column);
    return this.cellsOfSheet.at(row, column) === "" ? spills.find((spill) => isWithin(spill, { row, column }))?.from : undefined;
  }
}

/** The apostrophe that keeps words words is not part of them. */
const asShown = (content: CellValue | undefined): CellValue =>
  typeof content === "string" && content.startsWith("'") ? content.slice(1) : (content ?? "");

function refuseSpill(range: string): never {
  throw new OnlyTheSheetKnows(range);
}

/** A planned sheet on which nothing was ever worked out. */
export function workedOut(plan: SheetPlan, laid: Laid = new Map()): LaidOver {
  const rows: CellValue[][] = [];
  for (const { address: cell, content } of plan.cells) {
    const { row, column } = block(cell).from;
    (rows[row - 1] ??= [])[column - 1] = content;
  }
  const contents = Array.from(rows, (line) => Array.from(line ?? [], asShown));
  const names = new Map(plan.names.map(({ name, range }) => [name.toLowerCase(), range]));
  const spills = plan.cells.flatMap(({ address: cell, spillsTo }) => (spillsTo ? [block(`${cell}:${spillsTo}`)] : []));
  return new LaidOver(new NamedCells("Plan", names, { row: 1, column: 1 }, contents, contents), laid, { stale: "all", spills });
}
