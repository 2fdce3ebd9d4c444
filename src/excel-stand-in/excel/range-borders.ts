import { BorderStyleTypes, type IBorderData, type IBorderStyleData, type Nullable } from "@univerjs/core";
import { assertFormatsOpen, writeCells, type SheetBlock } from "./cell-writer";
import { invalidArgument } from "./errors";
import type { Range } from "./range";
import { RangePart, excelColor } from "./range-part";
import type { StandsFor } from "./standing";

type Edge = `${Excel.BorderIndex}`;
type Side = "t" | "b" | "l" | "r";

/** Stands in for Excel.RangeBorderCollection. */
export class RangeBorderCollection implements StandsFor<Excel.RangeBorderCollection, keyof RangeBorderCollection> {
  constructor(private readonly range: Range) {}

  getItem(index: Edge | Excel.BorderIndex): RangeBorder {
    if (!(index in sidesOf)) throw invalidArgument(`The bench draws no "${index}" border.`);
    return new RangeBorder(this.range, index as keyof typeof sidesOf);
  }
}

/** Which sides of which cells an edge consists of; `first` and `last` say whether only the outer cells have it. */
const sidesOf = {
  EdgeTop: (cell: CellSpot) => (cell.row === 0 ? ["t"] : []),
  EdgeBottom: (cell: CellSpot) => (cell.row === cell.rowCount - 1 ? ["b"] : []),
  EdgeLeft: (cell: CellSpot) => (cell.column === 0 ? ["l"] : []),
  EdgeRight: (cell: CellSpot) => (cell.column === cell.columnCount - 1 ? ["r"] : []),
  InsideHorizontal: (cell: CellSpot) => [cell.row > 0 && "t", cell.row < cell.rowCount - 1 && "b"].filter(Boolean),
  InsideVertical: (cell: CellSpot) => [cell.column > 0 && "l", cell.column < cell.columnCount - 1 && "r"].filter(Boolean),
} satisfies Partial<Record<Edge, (cell: CellSpot) => (string | false)[]>>;

interface CellSpot {
  row: number;
  column: number;
  rowCount: number;
  columnCount: number;
}

const styles: Partial<Record<`${Excel.BorderLineStyle}`, BorderStyleTypes>> = {
  None: BorderStyleTypes.NONE,
  Dash: BorderStyleTypes.DASHED,
  DashDot: BorderStyleTypes.DASH_DOT,
  DashDotDot: BorderStyleTypes.DASH_DOT_DOT,
  Dot: BorderStyleTypes.DOTTED,
  Double: BorderStyleTypes.DOUBLE,
  SlantDashDot: BorderStyleTypes.SLANT_DASH_DOT,
};
const weights: Record<`${Excel.BorderWeight}`, BorderStyleTypes> = {
  Hairline: BorderStyleTypes.HAIR,
  Thin: BorderStyleTypes.THIN,
  Medium: BorderStyleTypes.MEDIUM,
  Thick: BorderStyleTypes.THICK,
};

/** Stands in for Excel.RangeBorder. A continuous line takes its thickness from `weight`. */
export class RangeBorder extends RangePart implements StandsFor<Excel.RangeBorder, keyof RangeBorder> {
  constructor(
    range: Range,
    private readonly edge: keyof typeof sidesOf,
  ) {
    super(range);
  }

  declare style: Excel.RangeBorder["style"];
  declare color: string;
  declare weight: Excel.RangeBorder["weight"];

  protected override changes() {
    return {
      style: (style: Excel.RangeBorder["style"]) =>
        this.draw("style", style, (line) => ({ ...line, s: styles[style] ?? BorderStyleTypes.THIN })),
      color: (color: string) => this.draw("color", color, (line) => ({ ...line, cl: { rgb: color } })),
      weight: (weight: Excel.RangeBorder["weight"]) => this.draw("weight", weight, (line) => ({ ...line, s: weights[weight] })),
    };
  }

  protected override readers() {
    return {
      style: (block: SheetBlock) => styleName(this.lineAt(block)?.s),
      color: (block: SheetBlock) => excelColor(this.lineAt(block)?.cl?.rgb, "#000000"),
      weight: (block: SheetBlock) => Object.entries(weights).find(([, style]) => style === this.lineAt(block)?.s)?.[0] ?? "Thin",
    };
  }

  private draw(property: string, value: unknown, change: (line: IBorderStyleData) => IBorderStyleData): void {
    this.set(property, value, (block) => {
      assertFormatsOpen(this.context.host, block);
      const sheet = this.context.host.gridSheet(block.sheetId);
      writeCells(this.context.host, block, true, (row, column) => {
        const sides = this.sides(block, row, column);
        if (sides.length === 0) return undefined;
        const present = sheet.getCellStyle(block.row + row, block.column + column)?.bd ?? {};
        const bd: IBorderData = {};
        for (const side of sides) {
          const line = change({ s: BorderStyleTypes.THIN, cl: { rgb: "#000000" }, ...present[side] });
          bd[side] = line.s === BorderStyleTypes.NONE ? null : line;
        }
        return { s: { bd } };
      });
    });
  }

  private sides(block: SheetBlock, row: number, column: number): Side[] {
    return sidesOf[this.edge]({ row, column, rowCount: block.rowCount, columnCount: block.columnCount }) as Side[];
  }

  private lineAt(block: SheetBlock): Nullable<IBorderStyleData> {
    const [row, column] = [this.edge === "EdgeBottom" ? block.rowCount - 1 : 0, this.edge === "EdgeRight" ? block.columnCount - 1 : 0];
    const side = this.sides(block, row, column)[0];
    const style = this.context.host.gridSheet(block.sheetId).getCellStyle(block.row + row, block.column + column);
    return side && style?.bd?.[side];
  }
}

function styleName(style: BorderStyleTypes | undefined): string {
  if (style === undefined || style === BorderStyleTypes.NONE) return "None";
  return Object.entries(styles).find(([, value]) => value === style)?.[0] ?? "Continuous";
}
