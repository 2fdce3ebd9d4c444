import { type Nullable, HorizontalAlign, VerticalAlign, WrapStrategy } from "@univerjs/core";
import type { SheetBlock } from "./cell-writer";
import { assertFormatsOpen } from "./cell-writer";
import { FormatProtection } from "./format-protection";
import type { Range } from "./range";
import { RangeBorderCollection } from "./range-borders";
import { RangeFill } from "./range-fill";
import { RangeFont } from "./range-font";
import { RangePart } from "./range-part";
import type { StandsFor } from "./standing";

/** Excel measures in points, the grid in pixels of a 96 dpi screen. */
export const POINTS_PER_PIXEL = 0.75;
const INDENT_PIXELS = 9;

const horizontal: Partial<Record<string, HorizontalAlign>> = {
  General: HorizontalAlign.UNSPECIFIED,
  Left: HorizontalAlign.LEFT,
  Center: HorizontalAlign.CENTER,
  Right: HorizontalAlign.RIGHT,
  Justify: HorizontalAlign.JUSTIFIED,
  Distributed: HorizontalAlign.DISTRIBUTED,
  CenterAcrossSelection: HorizontalAlign.CENTER,
};
const vertical: Partial<Record<string, VerticalAlign>> = {
  Top: VerticalAlign.TOP,
  Center: VerticalAlign.MIDDLE,
  Bottom: VerticalAlign.BOTTOM,
};

/** Stands in for Excel.RangeFormat. Widths and heights are in points. */
export class RangeFormat extends RangePart implements StandsFor<Excel.RangeFormat, keyof RangeFormat> {
  readonly fill: RangeFill;
  readonly font: RangeFont;
  readonly borders: RangeBorderCollection;
  readonly protection: FormatProtection;

  constructor(range: Range) {
    super(range);
    this.fill = new RangeFill(range);
    this.font = new RangeFont(range);
    this.borders = new RangeBorderCollection(range);
    this.protection = new FormatProtection(range);
  }

  declare horizontalAlignment: Excel.RangeFormat["horizontalAlignment"];
  declare verticalAlignment: Excel.RangeFormat["verticalAlignment"];
  declare wrapText: boolean;
  declare indentLevel: number;
  declare columnWidth: number;
  declare rowHeight: number;

  protected override children() {
    return { fill: () => this.fill, font: () => this.font, protection: () => this.protection };
  }

  protected override changes() {
    return {
      horizontalAlignment: (side: Excel.RangeFormat["horizontalAlignment"]) =>
        this.setStyle("horizontalAlignment", side, { ht: horizontal[side] ?? HorizontalAlign.UNSPECIFIED }),
      verticalAlignment: (side: Excel.RangeFormat["verticalAlignment"]) =>
        this.setStyle("verticalAlignment", side, { vt: vertical[side] ?? VerticalAlign.BOTTOM }),
      wrapText: (on: boolean) => this.setStyle("wrapText", on, { tb: on ? WrapStrategy.WRAP : WrapStrategy.OVERFLOW }),
      indentLevel: (level: number) => this.setStyle("indentLevel", level, { pd: { l: level * INDENT_PIXELS } }),
      columnWidth: (points: number) =>
        this.set("columnWidth", points, (block) => {
          assertFormatsOpen(this.context.host, block);
          this.context.host.sheet(block.sheetId).setColumnWidths(block.column, block.columnCount, Math.round(points / POINTS_PER_PIXEL));
        }),
      rowHeight: (points: number) =>
        this.set("rowHeight", points, (block) => {
          assertFormatsOpen(this.context.host, block);
          this.context.host.sheet(block.sheetId).setRowHeightsForced(block.row, block.rowCount, Math.round(points / POINTS_PER_PIXEL));
        }),
    };
  }

  protected override readers() {
    const sheet = (block: SheetBlock) => this.context.host.gridSheet(block.sheetId);
    const nameOf = (names: Partial<Record<string, number>>, value: Nullable<number>, fallback: string) =>
      Object.entries(names).find(([, one]) => one === value)?.[0] ?? fallback;
    return {
      horizontalAlignment: (block: SheetBlock) => this.common(block, (style) => nameOf(horizontal, style?.ht, "General")),
      verticalAlignment: (block: SheetBlock) => this.common(block, (style) => nameOf(vertical, style?.vt, "Bottom")),
      wrapText: (block: SheetBlock) => this.common(block, (style) => style?.tb === WrapStrategy.WRAP),
      indentLevel: (block: SheetBlock) => this.common(block, (style) => Math.round((style?.pd?.l ?? 0) / INDENT_PIXELS)),
      columnWidth: (block: SheetBlock) => sheet(block).getColumnWidth(block.column) * POINTS_PER_PIXEL,
      rowHeight: (block: SheetBlock) => sheet(block).getRowHeight(block.row) * POINTS_PER_PIXEL,
    };
  }
}
