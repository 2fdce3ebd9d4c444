import type { IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { Sheet } from "hucre/xlsx";
import type { WorkbookExtras } from "../excel/sheet-extras";
import type { CarriedFile } from "./carry";
import { readDrawing } from "./charts/read-drawing";
import { writeDrawing } from "./charts/write-drawing";
import { frameNotes } from "./note-frames";
import type { GridNotes } from "./notes";
import { partText, setPartText, type PackageParts } from "./package-parts";
import { protectionXml } from "./protection";
import { addRelationship, officeRelation } from "./relationships";
import { readResource, RESOURCE } from "./resources";
import { readFragments, withBlackAndWhite, withDefaultSizes, withDrawing } from "./sheet-fragments";
import { columnsFromFile, rowsFromFile } from "./sheet-geometry";

/**
 * Adds to each finished worksheet what hucre does not write: default sizes, protection, black and white, drawings.
 * @param before the sheets as the opened file had them, in the snapshot's order
 */
export function finishSheets(
  parts: PackageParts,
  snapshot: IWorkbookData,
  extras: WorkbookExtras,
  carried: CarriedFile | undefined,
  before: readonly (Sheet | undefined)[],
): void {
  const notes = readResource<Record<string, GridNotes>>(snapshot, RESOURCE.notes) ?? {};
  const sheetName = (id: string): string | undefined => snapshot.sheets[id]?.name;
  snapshot.sheetOrder.forEach((id, index) => {
    const part = `xl/worksheets/sheet${index + 1}.xml`;
    const sheet: Partial<IWorksheetData> = snapshot.sheets[id] ?? {};
    const own = extras.sheets[id];
    const entry = carried?.entries.get(id);
    const fragments = entry && readFragments(partText(carried!.parts, entry.part) ?? "");
    let xml = withDefaultSizes(partText(parts, part) ?? "", sheet);
    xml = xml.replace(/<sheetProtection\b[^>]*\/>/, protectionXml(own?.protection, fragments?.protection));
    if (own?.pageLayout?.blackAndWhite) xml = withBlackAndWhite(xml);
    const drawing =
      carried &&
      entry &&
      fragments &&
      readDrawing(carried.parts, entry.part, { ...fragments.sizes, ...cellSizes(before[index]) }, carried.sheetIdOf);
    const path = writeDrawing(parts, {
      charts: own?.charts ?? [],
      sheet,
      sheetName,
      carried: drawing && { parts: carried.parts, drawing },
      nameKept: (sheetId) => sheetName(sheetId) === carried?.entries.get(sheetId)?.name,
    });
    if (path) xml = withDrawing(xml, addRelationship(parts, part, officeRelation("drawing"), `/${path}`));
    setPartText(parts, part, xml);
    frameNotes(parts, part, sheet, notes[id]);
  });
}

const cellSizes = (sheet: Sheet | undefined): Partial<IWorksheetData> => ({
  columnData: columnsFromFile(sheet?.columns),
  rowData: rowsFromFile(sheet?.rowDefs),
});
