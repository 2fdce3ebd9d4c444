import type { IWorksheetData } from "@univerjs/core";
import { DEFAULT_COLUMN_PIXELS, DEFAULT_ROW_PIXELS, pixelsOfPoints, pixelsOfWidth, pointsOfPixels, widthOfPixels } from "./sheet-geometry";
import { parseXml } from "./xml";

/** The size that the grid gives to a sheet that says nothing. */
const GRID_COLUMN_PIXELS = 88;
const GRID_ROW_PIXELS = 24;

/** One self-closing element of a worksheet, such as `<sheetFormatPr .../>`, with or without a prefix. */
function fragment(sheetXml: string, name: string): Record<string, string> | undefined {
  const found = new RegExp(`<(?:\\w+:)?${name}\\b[^>]*?/?>`).exec(sheetXml)?.[0];
  if (!found) return undefined;
  const plain = found
    .replace(/^<\w+:/, "<")
    .replace(/\/?>$/, "/>")
    .replace(/\s[\w]+:[\w]+="[^"]*"/g, "");
  return parseXml(plain).attributes;
}

/** The few things of a sheet that hucre does not read. Cells hold no such elements, so only the ends are searched. */
export function readFragments(sheetXml: string): {
  sizes: { defaultColumnWidth: number; defaultRowHeight: number };
  blackAndWhite: boolean;
  protection: Record<string, string> | undefined;
} {
  const start = sheetXml.search(/<(?:\w+:)?sheetData\b/);
  const end = Math.max(sheetXml.search(/<\/(?:\w+:)?sheetData>/), start);
  const format = fragment(sheetXml.slice(0, start), "sheetFormatPr");
  const tail = sheetXml.slice(end);
  const width = Number(format?.defaultColWidth);
  const height = Number(format?.defaultRowHeight);
  return {
    sizes: {
      defaultColumnWidth: width > 0 ? pixelsOfWidth(width) : DEFAULT_COLUMN_PIXELS,
      defaultRowHeight: height > 0 ? pixelsOfPoints(height) : DEFAULT_ROW_PIXELS,
    },
    blackAndWhite: ["1", "true"].includes(fragment(tail, "pageSetup")?.blackAndWhite ?? ""),
    protection: fragment(tail, "sheetProtection"),
  };
}

export const defaultSizes = (sheet: Partial<IWorksheetData>): { column: number; row: number } => ({
  column: sheet.defaultColumnWidth ?? GRID_COLUMN_PIXELS,
  row: sheet.defaultRowHeight ?? GRID_ROW_PIXELS,
});

/** Puts the sheet's default sizes into a finished worksheet. */
export function withDefaultSizes(sheetXml: string, sheet: Partial<IWorksheetData>): string {
  const { column, row } = defaultSizes(sheet);
  const width = column === DEFAULT_COLUMN_PIXELS ? "" : ` defaultColWidth="${widthOfPixels(column)}"`;
  const custom = row === DEFAULT_ROW_PIXELS ? "" : ' customHeight="1"';
  return sheetXml.replace(/<sheetFormatPr\b[^>]*\/>/, `<sheetFormatPr${width} defaultRowHeight="${pointsOfPixels(row)}"${custom}/>`);
}

export function withBlackAndWhite(sheetXml: string): string {
  if (/<pageSetup\b/.test(sheetXml)) return sheetXml.replace(/<pageSetup\b/, '<pageSetup blackAndWhite="1"');
  return sheetXml.replace(/(<pageMargins\b[^>]*\/>)/, '$1<pageSetup blackAndWhite="1"/>');
}

/** Elements that follow a drawing in a worksheet (ECMA-376 part 1, 18.3.1.99). */
const AFTER_DRAWING = ["legacyDrawing", "legacyDrawingHF", "picture", "oleObjects", "controls", "webPublishItems", "tableParts", "extLst"];

export function withDrawing(sheetXml: string, relationshipId: string): string {
  const next = sheetXml.search(new RegExp(`<(?:${AFTER_DRAWING.join("|")})[ >]`));
  const at = next < 0 ? sheetXml.lastIndexOf("</worksheet>") : next;
  return `${sheetXml.slice(0, at)}<drawing r:id="${relationshipId}"/>${sheetXml.slice(at)}`;
}
