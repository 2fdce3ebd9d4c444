import { block } from "../plan/addresses";
import { rectangles } from "../plan/areas";
import { cellRange } from "../plan/cell-range";
import type { CellPlan, SheetPlan } from "../plan/sheet-plan";
import { fontName, numberFormats, styles, type Style } from "../plan/styles";

/** Queues merges, looks and number formats, few rectangles at a time. */
export function writeFormats(sheet: Excel.Worksheet, plan: Pick<SheetPlan, "cells">): void {
  for (const cell of plan.cells) if (cell.mergeTo) sheet.getRange(cellRange(cell)).merge(false);
  for (const [name, cells] of groups(plan.cells, ({ style }) => style)) {
    for (const area of rectangles(cells.map(cellRange))) dress(sheet.getRange(area), styles[name]);
  }
  const formatted = plan.cells.filter(({ format }) => format !== undefined && numberFormats[format] !== "General");
  for (const [pattern, cells] of groups(formatted, ({ format }) => numberFormats[format ?? "general"])) {
    for (const area of rectangles(cells.map(({ address }) => address))) sheet.getRange(area).numberFormat = filled(area, pattern);
  }
}

function groups<K>(cells: readonly CellPlan[], key: (cell: CellPlan) => K): Map<K, CellPlan[]> {
  const found = new Map<K, CellPlan[]>();
  for (const cell of cells) {
    const alike = found.get(key(cell));
    if (alike) alike.push(cell);
    else found.set(key(cell), [cell]);
  }
  return found;
}

function dress({ format }: Excel.Range, { fill, color, size, bold, italic, align, indent, wrap, line }: Style): void {
  format.font.name = fontName;
  format.font.size = size;
  format.font.color = color;
  if (bold) format.font.bold = true;
  if (italic) format.font.italic = true;
  if (fill) format.fill.color = fill;
  format.horizontalAlignment = align;
  format.verticalAlignment = "Center";
  if (indent) format.indentLevel = indent;
  if (wrap) format.wrapText = true;
  if (!line) return;
  for (const edge of ["EdgeBottom", "InsideHorizontal"] as const) {
    const border = format.borders.getItem(edge);
    border.style = "Continuous";
    border.weight = line.weight;
    border.color = line.color;
  }
}

/** The pattern for each cell of an area, as Excel wants it. */
function filled(area: string, pattern: string): string[][] {
  const { from, to } = block(area);
  return Array.from({ length: to.row - from.row + 1 }, () => Array.from({ length: to.column - from.column + 1 }, () => pattern));
}
