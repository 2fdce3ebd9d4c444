import { block } from "./addresses";
import type {
  CellContent,
  CellPlan,
  ChartPlan,
  HighlightPlan,
  NamePlan,
  NotePlan,
  NumberFormat,
  PrintPlan,
  SheetPlan,
  StyleName,
  TablePlan,
  ValidationPlan,
} from "./sheet-plan";

/** Height of a row unless the plan says otherwise. */
export const rowHeightPoints = 14.25;

/** A row whose words may need several lines. */
export const linesPoints = (lines: 2 | 3 | 4): number => rowHeightPoints * lines;

/** Room enough for a pen on a page printed at three quarters of its size. */
const handwritingPoints = 22;

/** The empty row that parts two sections. */
export const gapPoints = 5;

export interface CellOptions<Name extends string = string> {
  readonly style: StyleName;
  readonly format?: NumberFormat;
  readonly mergeTo?: string;
  readonly spillsTo?: string;
  /** Sheet-scoped name of the cell. */
  readonly name?: Name;
  readonly note?: string;
  readonly choices?: readonly string[];
  /** Lowest and highest number that may be typed. */
  readonly between?: readonly [number, number];
}

/**
 * Collects a sheet from top to bottom. Sections put cells at columns of the current row and move `row` on; names make
 * formulas independent of where things end up. Who knows which names there may be can say so (`Name`).
 */
export class SheetBuilder<Name extends string = string> {
  /** The row that is being filled, from 1. */
  row = 1;
  private readonly cells = new Map<string, CellPlan>();
  private readonly names: NamePlan[] = [];
  private readonly tables: TablePlan[] = [];
  private readonly validations: ValidationPlan[] = [];
  private readonly notes: NotePlan[] = [];
  private readonly highlights: HighlightPlan[] = [];
  private readonly charts: ChartPlan[] = [];
  private readonly rowHeights = new Map<number, number>();

  /** @param tableRows rows of tables, by their names, on a sheet that stands already; a new sheet has the usual ones */
  constructor(readonly tableRows: Readonly<Record<string, number>> = {}) {}

  put(column: string, content: CellContent, options: CellOptions<Name>, row = this.row): string {
    const address = `${column}${row}`;
    if (this.cells.has(address)) throw new Error(`two things are planned for ${address}`);
    const { style, format, mergeTo, spillsTo } = options;
    this.cells.set(address, {
      address,
      content,
      style,
      ...(format && { format }),
      ...(mergeTo && { mergeTo }),
      ...(spillsTo && { spillsTo }),
    });
    if (options.name) this.name(options.name, address);
    if (options.note) this.notes.push({ address, text: options.note });
    if (options.choices)
      this.validations.push({
        kind: "list",
        range: address,
        choices: options.choices,
        message: `Choose one of: ${options.choices.join(", ")}.`,
      });
    if (options.between) this.between(address, options.between);
    return address;
  }

  name(name: Name, range: string): void {
    if (this.names.some((other) => other.name === name)) throw new Error(`the name ${name} is planned twice`);
    this.names.push({ name, range });
  }

  table(plan: TablePlan): void {
    this.tables.push(plan);
  }

  validate(plan: ValidationPlan): void {
    this.validations.push(plan);
  }

  between(range: string, [from, to]: readonly [number, number]): void {
    this.validations.push({ kind: "decimal", range, from, to, message: `Type a number from ${from} to ${to}.` });
  }

  highlight(plan: HighlightPlan): void {
    this.highlights.push(plan);
  }

  chart(plan: ChartPlan): void {
    this.charts.push(plan);
  }

  /** Leaves a narrow empty row. */
  gap(): void {
    this.height(gapPoints);
    this.row += 1;
  }

  height(points: number, row = this.row): void {
    this.rowHeights.set(row, points);
  }

  /** Height of a run of rows, in points. */
  heightOf(from: number, to: number): number {
    let points = 0;
    for (let row = from; row <= to; row += 1) points += this.rowHeights.get(row) ?? rowHeightPoints;
    return points;
  }

  /** The rows of a name. */
  rowsOf(name: Name): number[] {
    const range = this.names.find((other) => other.name === name)?.range;
    if (range === undefined) throw new Error(`nothing is called ${name}`);
    const { from, to } = block(range);
    return Array.from({ length: to.row - from.row + 1 }, (_, index) => from.row + index);
  }

  /** Shares room that is left on a page among rows that people write into by hand, up to a comfortable height. */
  stretch(rows: readonly number[], sparePoints: number): void {
    const each = sparePoints / rows.length;
    if (!(each > 0)) return;
    for (const row of rows) {
      const points = this.rowHeights.get(row) ?? rowHeightPoints;
      // Whole quarters: Excel keeps row heights in such steps.
      this.height(Math.max(points, Math.floor(4 * Math.min(points + each, handwritingPoints)) / 4), row);
    }
  }

  build(sheetName: string, columnWidths: readonly number[], print: PrintPlan, frozenRows: number): SheetPlan {
    const { cells, names, tables, validations, notes, highlights, charts } = this;
    const rowHeights = [...this.rowHeights].map(([row, points]) => ({ row, points }));
    return {
      sheetName,
      columnWidths,
      rowHeights,
      cells: [...cells.values()],
      names,
      tables,
      validations,
      notes,
      highlights,
      charts,
      print,
      frozenRows,
    };
  }
}
