import { address, columnLetters, type Position } from "../../grid/plan/addresses";
import type { At, Workings } from "./plain/workings";

/** Cells that are written for plain formulas to rest on. */
export interface WorkingBlock {
  /** "K212:S240". */
  readonly range: string;
  readonly contents: readonly (readonly string[])[];
}

/** Hands out cells below a sheet, block under block. What was asked for before, word for word, is not put twice. */
export class WorkingCells {
  private row: number;
  private readonly known = new Map<string, { readonly block: WorkingBlock; readonly at: At }>();
  private asked = new Set<WorkingBlock>();

  constructor(private readonly corner: Position) {
    this.row = corner.row;
  }

  readonly put = (workings: Workings): At => {
    const key = JSON.stringify(workings((row, column) => `[${row},${column}]`));
    const found = this.known.get(key) ?? this.place(workings);
    this.known.set(key, found);
    this.asked.add(found.block);
    return found.at;
  };

  private place(workings: Workings): { readonly block: WorkingBlock; readonly at: At } {
    const { row: first, corner } = { row: this.row, corner: this.corner };
    const at: At = (row, column) => `$${columnLetters(corner.column + column)}$${first + row}`;
    const rows = workings(at);
    const width = Math.max(...rows.map((row) => row.length));
    const contents = rows.map((row) => Array.from({ length: width }, (_, column) => row[column] ?? ""));
    this.row += rows.length + 1;
    return {
      at,
      block: { range: `${address(first, corner.column)}:${address(first + rows.length - 1, corner.column + width - 1)}`, contents },
    };
  }

  /** The blocks that were asked for since this was last called. */
  taken(): WorkingBlock[] {
    const taken = [...this.asked];
    this.asked = new Set();
    return taken;
  }
}
