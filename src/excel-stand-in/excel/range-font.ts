import { BooleanNumber, type IStyleData } from "@univerjs/core";
import type { SheetBlock } from "./cell-writer";
import { RangePart, excelColor } from "./range-part";
import type { StandsFor } from "./standing";

const DEFAULT_SIZE = 11;
const DEFAULT_FACE = "Arial";
const flag = (on: boolean): BooleanNumber => (on ? BooleanNumber.TRUE : BooleanNumber.FALSE);

/** Stands in for Excel.RangeFont. Sizes are in points. */
export class RangeFont
  extends RangePart
  implements StandsFor<Excel.RangeFont, "bold" | "italic" | "color" | "size" | "name" | "underline" | "strikethrough">
{
  get bold(): boolean {
    return this.get("bold");
  }
  set bold(on: boolean) {
    this.setStyle("bold", on, { bl: flag(on) });
  }
  get italic(): boolean {
    return this.get("italic");
  }
  set italic(on: boolean) {
    this.setStyle("italic", on, { it: flag(on) });
  }
  get strikethrough(): boolean {
    return this.get("strikethrough");
  }
  set strikethrough(on: boolean) {
    this.setStyle("strikethrough", on, { st: { s: flag(on) } });
  }
  get underline(): Excel.RangeFont["underline"] {
    return this.get("underline");
  }
  set underline(kind: Excel.RangeFont["underline"]) {
    this.setStyle("underline", kind, { ul: { s: flag(kind !== "None") } });
  }
  get color(): string {
    return this.get("color");
  }
  set color(color: string) {
    this.setStyle("color", color, { cl: { rgb: color } });
  }
  get size(): number {
    return this.get("size");
  }
  set size(points: number) {
    this.setStyle("size", points, { fs: points });
  }
  get name(): string {
    return this.get("name");
  }
  set name(face: string) {
    this.setStyle("name", face, { ff: face });
  }

  protected readers() {
    const read =
      <T>(pick: (style: IStyleData) => T) =>
      (block: SheetBlock) =>
        this.common(block, (style) => pick(style ?? {}));
    return {
      bold: read((style) => style.bl === BooleanNumber.TRUE),
      italic: read((style) => style.it === BooleanNumber.TRUE),
      strikethrough: read((style) => style.st?.s === BooleanNumber.TRUE),
      underline: read((style) => (style.ul?.s === BooleanNumber.TRUE ? "Single" : "None")),
      color: read((style) => excelColor(style.cl?.rgb, "#000000")),
      size: read((style) => style.fs ?? DEFAULT_SIZE),
      name: read((style) => style.ff ?? DEFAULT_FACE),
    };
  }
}
