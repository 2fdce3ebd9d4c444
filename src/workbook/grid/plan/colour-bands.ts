import { hexOfSrm } from "../../../core/beer/hex";
import type { SheetBuilder } from "./sheet-builder";

/** SRM at which a band begins. */
const edges = [0, 2, 3, 4, 5, 6, 8, 10, 12, 14, 17, 20, 24, 29, 35, 42, 1000];

/**
 * Custom functions do not work in conditional formats: a swatch changes by bands of the native cell that holds the colour.
 *
 * @param cell the colour's cell as the swatch's first cell sees it, such as "$N$7" or "$N7"
 * @param scale what one SRM is on the scale of that cell, as a number or as the cell's formula
 */
export function colourBands(b: SheetBuilder, swatch: string, cell: string, scale: number | string): void {
  const times = (srm: number): string => (typeof scale === "number" ? String(round(srm * scale)) : `${srm}*${scale}`);
  for (const [index, from] of edges.slice(0, -1).entries()) {
    const to = edges[index + 1] ?? from;
    const fill = hexOfSrm(Math.min(from + (Math.min(to, 50) - from) / 2, 50), 5);
    b.highlight({
      range: swatch,
      formula: `=AND(ISNUMBER(${cell}),${cell}>=${times(from)},${cell}<${times(to)})`,
      fill,
      color: from < 14 ? "#1D1B16" : "#FFFFFF",
    });
  }
}

const round = (value: number): number => Math.round(value * 100) / 100;
