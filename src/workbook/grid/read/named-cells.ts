import { address, block, type Block } from "../plan/addresses";

/** A cell that nothing is typed into. */
export type Blank = "";

/** What a cell shows: Excel gives "" for an empty cell and "#N/A" and the like as text. */
export type CellValue = number | string | boolean;

/**
 * A sheet as it stood at one moment, spoken to by its sheet-scoped names, so that rows that somebody has put in do not matter.
 * Nothing of Excel lives in it: it can be kept and compared. Who knows which names such a sheet has can say so (`Name`).
 */
export class NamedCells<Name extends string = string> {
  constructor(
    readonly sheetName: string,
    /** Range of each name, "B7" or "B20:E27", in small letters. */
    private readonly ranges: ReadonlyMap<string, string>,
    /** Top left cell of what was read. */
    private readonly corner: { readonly row: number; readonly column: number },
    private readonly values: readonly (readonly CellValue[])[],
    private readonly formulas: readonly (readonly CellValue[])[],
  ) {}

  has(name: Name): boolean {
    return this.ranges.has(name.toLowerCase());
  }

  names(): readonly string[] {
    return [...this.ranges.keys()];
  }

  /** "B7" or "B20:E27". @throws where the sheet has no such name (somebody deleted its cells, or it is no sheet of ours) */
  range(name: Name): string {
    const found = this.ranges.get(name.toLowerCase());
    if (found === undefined) throw new MissingName(this.sheetName, name);
    return found;
  }

  at(row: number, column: number): CellValue {
    return this.values[row - this.corner.row]?.[column - this.corner.column] ?? "";
  }

  /** The formula of a cell, or its constant. */
  formulaAt(row: number, column: number): CellValue {
    return this.formulas[row - this.corner.row]?.[column - this.corner.column] ?? "";
  }

  /** First cell of a name. */
  value(name: Name): CellValue {
    const { from } = block(this.range(name));
    return this.at(from.row, from.column);
  }

  formula(name: Name): CellValue {
    const { from } = block(this.range(name));
    return this.formulaAt(from.row, from.column);
  }

  /** A number, or "" where the cell is empty or holds anything else. */
  number(name: Name): number | Blank {
    const value = this.value(name);
    return typeof value === "number" ? value : "";
  }

  text(name: Name): string {
    return String(this.value(name)).trim();
  }

  /** A number that stands there; undefined where the cell holds none, or the sheet lacks it: one of an older plan. */
  knownNumber(name: Name): number | undefined {
    const value = this.has(name) ? this.value(name) : undefined;
    return typeof value === "number" ? value : undefined;
  }

  /** What stands there; "" also where the sheet lacks the cell. */
  knownText(name: Name): string {
    return this.has(name) ? this.text(name) : "";
  }

  /** All cells of a name, row by row. */
  block(name: Name): CellValue[][] {
    return this.every(name, (row, column) => this.at(row, column));
  }

  formulaBlock(name: Name): CellValue[][] {
    return this.every(name, (row, column) => this.formulaAt(row, column));
  }

  /** Rows and columns that a name covers, for cells that stand beside it. */
  area(name: Name): Block {
    return block(this.range(name));
  }

  /** Every cell that holds something, with its address: for walks over the whole sheet. */
  *filled(): Generator<{ readonly address: string; readonly value: CellValue; readonly formula: CellValue }> {
    for (const [index, line] of this.formulas.entries()) {
      for (const [position, formula] of line.entries()) {
        const value = this.values[index]?.[position] ?? "";
        if (formula === "" && value === "") continue;
        yield { address: address(this.corner.row + index, this.corner.column + position), value, formula };
      }
    }
  }

  /** The same sheet with other formulas in some cells, by their address: what the cells show stays. */
  withFormulas(others: ReadonlyMap<string, CellValue>): NamedCells<Name> {
    const { row: top, column: left } = this.corner;
    const formulas = this.formulas.map((line, row) =>
      line.map((formula, column) => others.get(address(top + row, left + column)) ?? formula),
    );
    return new NamedCells(this.sheetName, this.ranges, this.corner, this.values, formulas);
  }

  private every(name: Name, read: (row: number, column: number) => CellValue): CellValue[][] {
    const { from, to } = this.area(name);
    return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
      Array.from({ length: to.column - from.column + 1 }, (_2, column) => read(from.row + row, from.column + column)),
    );
  }
}

/** A name that should stand on the sheet and does not. */
export class MissingName extends Error {
  constructor(
    sheetName: string,
    readonly missing: string,
  ) {
    super(`"${sheetName}" has no cell named ${missing} any more: somebody deleted it, or the sheet was made by hand`);
    this.name = "MissingName";
  }
}
