import { BooleanNumber, type IStyleData } from "@univerjs/core";
import type { SheetBlock } from "./cell-writer";
import { RangePart, excelColor } from "./range-part";
import type { StandsFor } from "./standing";

const DEFAULT_SIZE = 11;
const DEFAULT_FACE = "Arial";
const flag = (on: boolean): BooleanNumber => (on ? BooleanNumber.TRUE : BooleanNumber.FALSE);

/** Stands in for Excel.RangeFont. Sizes are in points. */
export class RangeFont extends RangePart implements StandsFor<Excel.RangeFont, keyof RangeFont> {
  declare bold: boolean;
  declare italic: boolean;
  declare color: string;
  declare size: number;
  declare name: string;

  protected override changes() {
    return {
      bold: (on: boolean) => this.setStyle("bold", on, { bl: flag(on) }),
      italic: (on: boolean) => this.setStyle("italic", on, { it: flag(on) }),
      color: (color: string) => this.setStyle("color", color, { cl: { rgb: color } }),
      size: (points: number) => this.setStyle("size", points, { fs: points }),
      name: (face: string) => this.setStyle("name", face, { ff: face }),
    };
  }

  protected override readers() {
    const read =
      <T>(pick: (style: IStyleData) => T) =>
      (block: SheetBlock) =>
        this.common(block, (style) => pick(style ?? {}));
    return {
      bold: read((style) => style.bl === BooleanNumber.TRUE),
      italic: read((style) => style.it === BooleanNumber.TRUE),
      color: read((style) => excelColor(style.cl?.rgb, "#000000")),
      size: read((style) => style.fs ?? DEFAULT_SIZE),
      name: read((style) => style.ff ?? DEFAULT_FACE),
    };
  }
}
