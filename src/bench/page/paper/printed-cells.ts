import { CellValueType, HorizontalAlign, VerticalAlign, WrapStrategy, type IRange, type IStyleData, type Nullable } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";

export interface PrintedCell {
  readonly row: number;
  readonly column: number;
  readonly rowSpan: number;
  readonly columnSpan: number;
  /** As the grid shows it, number format and conditional look included. */
  readonly text: string;
  readonly isNumber: boolean;
  readonly align: "left" | "center" | "right";
  readonly verticalAlign: "top" | "middle" | "bottom";
  /** Words that go on over empty neighbours instead of into a second line. */
  readonly runsOn: boolean;
  readonly style: IStyleData;
}

/** The cells of a block as they stand, without hidden rows and columns and without what a merged cell covers. */
export function printedCells(sheet: FWorksheet, { startRow, endRow, startColumn, endColumn }: IRange): PrintedCell[] {
  const worksheet = sheet.getSheet();
  const cells: PrintedCell[] = [];
  for (let row = startRow; row <= endRow; row += 1) {
    if (!worksheet.getRowVisible(row)) continue;
    for (let column = startColumn; column <= endColumn; column += 1) {
      if (!worksheet.getColVisible(column)) continue;
      const merged = worksheet.getMergedCell(row, column);
      if (merged && (merged.startRow !== row || merged.startColumn !== column)) continue;
      const cell = worksheet.getCell(row, column);
      const style = worksheet.getComposedCellStyleByCellData(row, column, cell);
      const corner = merged && worksheet.getComposedCellStyle(merged.endRow, merged.endColumn);
      const isNumber = cell?.t === CellValueType.NUMBER;
      const text = textOf(cell, isNumber);
      const align = alignment(style.ht, cell?.t, text);
      cells.push({
        row,
        column,
        rowSpan: merged ? shown(merged.startRow, Math.min(merged.endRow, endRow), (at) => worksheet.getRowVisible(at)) : 1,
        columnSpan: merged ? shown(merged.startColumn, Math.min(merged.endColumn, endColumn), (at) => worksheet.getColVisible(at)) : 1,
        text,
        isNumber,
        align,
        verticalAlign: style.vt === VerticalAlign.TOP ? "top" : style.vt === VerticalAlign.MIDDLE ? "middle" : "bottom",
        runsOn: !isNumber && !merged && align === "left" && style.tb !== WrapStrategy.WRAP && style.tb !== WrapStrategy.CLIP,
        style: corner ? { ...style, bd: { ...style.bd, ...pick(corner.bd) } } : style,
      });
    }
  }
  return cells;
}

type Shown = ReturnType<ReturnType<FWorksheet["getSheet"]>["getCell"]>;

function textOf(cell: Shown, isNumber: boolean): string {
  if (!cell) return "";
  if (cell.p?.body) return cell.p.body.dataStream.replace(/[\r\n]+$/u, "").replaceAll("\r", "\n");
  if (cell.v === undefined || cell.v === null) return "";
  if (cell.t === CellValueType.BOOLEAN) return [true, 1, "1", "TRUE", "true"].includes(cell.v) ? "TRUE" : "FALSE";
  // Without a number format Excel shows at most eleven characters.
  if (isNumber && typeof cell.v === "number" && String(cell.v).length > 11) return String(Number(cell.v.toPrecision(9)));
  return String(cell.v);
}

function alignment(asked: IStyleData["ht"], type: Nullable<CellValueType>, text: string): PrintedCell["align"] {
  if (asked === HorizontalAlign.LEFT) return "left";
  if (asked === HorizontalAlign.CENTER) return "center";
  if (asked === HorizontalAlign.RIGHT) return "right";
  if (type === CellValueType.NUMBER) return "right";
  return type === CellValueType.BOOLEAN || text.startsWith("#") ? "center" : "left";
}

const shown = (from: number, to: number, visible: (index: number) => boolean): number =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index).filter(visible).length;

/** A merged block's right and lower lines belong to its last cell. */
const pick = (lines: IStyleData["bd"]): IStyleData["bd"] => ({ ...(lines?.r && { r: lines.r }), ...(lines?.b && { b: lines.b }) });
