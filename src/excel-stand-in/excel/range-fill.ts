import { RangePart, excelColor } from "./range-part";
import type { SheetBlock } from "./cell-writer";
import type { StandsFor } from "./standing";

/** Stands in for Excel.RangeFill. */
export class RangeFill extends RangePart implements StandsFor<Excel.RangeFill, keyof RangeFill> {
  declare color: string;

  clear(): void {
    this.setStyle("color", "", { bg: null });
  }

  protected override changes() {
    return {
      color: (color: string) => this.setStyle("color", color, { bg: { rgb: color } }),
    };
  }

  protected override readers() {
    return { color: (block: SheetBlock) => this.common(block, (style) => excelColor(style?.bg?.rgb, "")) };
  }
}
