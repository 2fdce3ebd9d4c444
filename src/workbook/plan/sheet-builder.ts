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

/** A row whose words may need two lines. */
export const twoLinesPoints = 26;

/** The empty row that parts two sections. */
export const gapPoints = 5;

export interface CellOptions {
  readonly style: StyleName;
  readonly format?: NumberFormat;
  readonly mergeTo?: string;
  readonly spillsTo?: string;
  /** Sheet-scoped name of the cell. */
  readonly name?: string;
  readonly note?: string;
  readonly choices?: readonly string[];
  /** Lowest and highest number that may be typed. */
  readonly between?: readonly [number, number];
}

/**
 * Collects a sheet from top to bottom. Sections put cells at columns of the current row and move `row` on; names make
 * formulas independent of where things end up.
 */
export class SheetBuilder {
  /** The row that is being filled, from 1. */
  row = 1;
  private readonly cells = new Map<string, CellPlan>();
  private readonly names: NamePlan[] = [];
  private readonly tables: TablePlan[] = [];
  private readonly validations: ValidationPlan[] = [];
  private readonly notes: NotePlan[] = [];
  private readonly highlights: HighlightPlan[] = [];
  private readonly charts: ChartPlan[] = [];
  private readonly rowHeights: { row: number; points: number }[] = [];

  put(column: string, content: CellContent, options: CellOptions, row = this.row): string {
    const address = `${column}${row}`;
    if (this.cells.has(address)) throw new Error(`two things are planned for ${address}`);
    const { style, format, mergeTo, spillsTo } = options;
    this.cells.set(address, { address, content, style, ...(format && { format }), ...(mergeTo && { mergeTo }), ...(spillsTo && { spillsTo }) });
    if (options.name) this.name(options.name, address);
    if (options.note) this.notes.push({ address, text: options.note });
    if (options.choices) this.validations.push({ kind: "list", range: address, choices: options.choices, message: `Choose one of: ${options.choices.join(", ")}.` });
    if (options.between) this.between(address, options.between);
    return address;
  }

  name(name: string, range: string): void {
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
    this.rowHeights.push({ row, points });
  }

  /** Height of a run of rows, in points. */
  heightOf(from: number, to: number): number {
    const special = this.rowHeights.filter(({ row }) => row >= from && row <= to).reduce((sum, { points }) => sum + points - rowHeightPoints, 0);
    return (to - from + 1) * rowHeightPoints + special;
  }

  build(sheetName: string, columnWidths: readonly number[], print: PrintPlan, frozenRows: number): SheetPlan {
    const { cells, names, tables, validations, notes, highlights, charts, rowHeights } = this;
    return { sheetName, columnWidths, rowHeights, cells: [...cells.values()], names, tables, validations, notes, highlights, charts, print, frozenRows };
  }
}
