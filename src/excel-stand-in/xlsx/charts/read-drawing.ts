import type { IWorksheetData } from "@univerjs/core";
import type { ChartRecord } from "../../excel/sheet-extras";
import { partText, type PackageParts } from "../package-parts";
import { relatedParts } from "../relationships";
import { findDeep, localName, parseXml, type XmlElement } from "../xml";
import { placingFromFile } from "./anchors";
import { chartFromXml } from "./read-chart";

/** One thing laid over a sheet, as the file has it; `chart` if it is a chart that the grid can show. */
export interface DrawingItem {
  anchor: XmlElement;
  chart?: ChartRecord;
}
export interface SheetDrawing {
  path: string;
  root: XmlElement;
  items: DrawingItem[];
}

/** The drawing of a sheet: charts, pictures and shapes; undefined if the sheet has none. */
export function readDrawing(
  parts: PackageParts,
  sheetPart: string,
  sheet: Partial<IWorksheetData>,
  sheetId: (sheetName: string) => string | undefined,
): SheetDrawing | undefined {
  const path = relatedParts(parts, sheetPart, "drawing")[0]?.path;
  const source = path && partText(parts, path);
  if (!path || !source) return undefined;
  const root = parseXml(source);
  const items = root.children
    .filter((child) => /Anchor$/.test(localName(child)))
    .map((anchor, index) => {
      const chart = chartOf(parts, path, anchor, sheet, sheetId, `chart-${sheetPart}-${index + 1}`);
      return chart ? { anchor, chart } : { anchor };
    });
  return { path, root, items };
}

function chartOf(
  parts: PackageParts,
  drawing: string,
  anchor: XmlElement,
  sheet: Partial<IWorksheetData>,
  sheetId: (sheetName: string) => string | undefined,
  id: string,
): ChartRecord | undefined {
  const relation = findDeep(findDeep(anchor, "graphicData"), "chart")?.attributes;
  const key = Object.keys(relation ?? {}).find((name) => name.endsWith(":id"));
  const path = relatedParts(parts, drawing, "chart").find((one) => key && one.id === relation?.[key])?.path;
  const source = path && partText(parts, path);
  const placing = source ? placingFromFile(anchor, sheet) : undefined;
  const content = source && placing ? chartFromXml(parseXml(source), sheetId) : undefined;
  if (!placing || !content) return undefined;
  return { id, name: findDeep(anchor, "cNvPr")?.attributes.name ?? "Chart", ...content, ...placing };
}
