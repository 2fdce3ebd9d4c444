import type { IWorksheetData } from "@univerjs/core";
import { cornerBeyond, pixelCorner, pixelsInto, spanInPixels, type Corner } from "./charts/anchors";
import type { GridNotes } from "./notes";
import { partText, setPartText, type PackageParts } from "./package-parts";
import { relatedParts } from "./relationships";

/** One note's shape in the old drawing language; it may hold loose HTML, so it is searched and not parsed. */
const CLIENT_DATA = /<x:ClientData\b[^>]*ObjectType="Note"[\s\S]*?<\/x:ClientData>/g;
const ANCHOR = /<x:Anchor>([\d,\s-]+)<\/x:Anchor>/;

/** The sizes of a sheet's notes in pixels by "row,column", as the opened file frames them. */
export function noteSizes(
  parts: PackageParts,
  sheetPart: string,
  sheet: Partial<IWorksheetData>,
): Map<string, { width: number; height: number }> {
  const sizes = new Map<string, { width: number; height: number }>();
  for (const { path } of relatedParts(parts, sheetPart, "vmlDrawing")) {
    for (const [shape] of (partText(parts, path) ?? "").matchAll(CLIENT_DATA)) {
      const numbers = ANCHOR.exec(shape)?.[1]?.split(",").map(Number) ?? [];
      if (numbers.length !== 8 || numbers.some(Number.isNaN)) continue;
      const [left, leftPixels, top, topPixels, right, rightPixels, bottom, bottomPixels] = numbers as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      const size = spanInPixels(
        pixelCorner(left, leftPixels, top, topPixels),
        pixelCorner(right, rightPixels, bottom, bottomPixels),
        sheet,
      );
      if (size.width > 0 && size.height > 0) sizes.set(cellOf(shape), size);
    }
  }
  return sizes;
}

const cellOf = (shape: string): string => `${/<x:Row>(\d+)/.exec(shape)?.[1]},${/<x:Column>(\d+)/.exec(shape)?.[1]}`;

/** hucre gives all notes one small frame, in which longer ones are cut off; each gets the size it has in the grid. */
export function frameNotes(parts: PackageParts, sheetPart: string, sheet: Partial<IWorksheetData>, notes: GridNotes | undefined): void {
  const path = relatedParts(parts, sheetPart, "vmlDrawing")[0]?.path;
  if (!path || !notes) return;
  const framed = (partText(parts, path) ?? "").replace(CLIENT_DATA, (shape) => {
    const [row, column] = cellOf(shape).split(",").map(Number) as [number, number];
    const note = notes[row]?.[column];
    if (!note?.width || !note.height) return shape;
    const from = pixelCorner(column + 1, 15, row, 2);
    const to = cornerBeyond(from, note.width, note.height, sheet);
    return shape.replace(ANCHOR, `<x:Anchor>${[...numbersOf(from), ...numbersOf(to)].join(",")}</x:Anchor>`);
  });
  setPartText(parts, path, framed);
}

const numbersOf = (corner: Corner): number[] => [corner.column, pixelsInto(corner.columnOffset), corner.row, pixelsInto(corner.rowOffset)];
