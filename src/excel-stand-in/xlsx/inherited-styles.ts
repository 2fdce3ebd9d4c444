import type { ICellData, IStyleData, IWorkbookData, IWorksheetData, Nullable } from "@univerjs/core";

/**
 * The look that a cell takes over from its column and row, when those were formatted as a whole. hucre 1.0.0 has no way
 * to format a column or row itself, so the look is written to each cell up to the grid's end.
 */
export class InheritedStyles {
  private readonly rows: ReadonlyMap<number, IStyleData>;
  private readonly columns: ReadonlyMap<number, IStyleData>;

  constructor(
    private readonly snapshot: IWorkbookData,
    private readonly sheet: Partial<IWorksheetData>,
  ) {
    this.rows = this.collect(sheet.rowData);
    this.columns = this.collect(sheet.columnData);
  }

  /** A cell's look with what it takes over; its own properties win over the row's, those over the column's. */
  styleOf(cell: ICellData | undefined, row: number, column: number): IStyleData | undefined {
    const own = this.resolve(cell?.s);
    const [ofRow, ofColumn] = [this.rows.get(row), this.columns.get(column)];
    return ofRow || ofColumn ? { ...ofColumn, ...ofRow, ...own } : own;
  }

  /** The cells without contents of their own that still have a look. */
  *emptyCells(): Generator<[row: number, column: number]> {
    const { rowCount = 0, columnCount = 0, cellData = {} } = this.sheet;
    const rowsAt = this.columns.size > 0 ? Array.from({ length: rowCount }, (_, row) => row) : [...this.rows.keys()];
    for (const row of rowsAt) {
      const columnsAt = this.rows.has(row) ? Array.from({ length: columnCount }, (_, column) => column) : [...this.columns.keys()];
      for (const column of columnsAt) if (!cellData[row]?.[column]) yield [row, column];
    }
  }

  private collect(list: Record<number, Nullable<{ s?: Nullable<IStyleData | string> }>> | undefined): Map<number, IStyleData> {
    const result = new Map<number, IStyleData>();
    for (const [index, item] of Object.entries(list ?? {})) {
      const style = item ? this.resolve(item.s) : undefined;
      if (style) result.set(Number(index), style);
    }
    return result;
  }

  private resolve(style: Nullable<IStyleData | string>): IStyleData | undefined {
    return (typeof style === "string" ? this.snapshot.styles[style] : style) || undefined;
  }
}
