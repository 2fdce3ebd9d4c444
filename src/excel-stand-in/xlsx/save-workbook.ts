import type { IWorkbookData, IWorksheetData } from "@univerjs/core";
import { openXlsx, saveXlsx, writeXlsx, type Sheet, type WorkbookProperties, type WriteSheet } from "hucre/xlsx";
import { SHEET_EXTRAS_RESOURCE, type WorkbookExtras } from "../excel/sheet-extras";
import { cellAddress } from "./addresses";
import { arrangeParts } from "./arrange-parts";
import { takeApart, type CarriedFile, type Carry } from "./carry";
import { DEFAULT_FONT, type StyleContext } from "./cell-styles";
import type { ComputedValues } from "./computed-values";
import { conditionalFormatsToFile, type GridConditionalFormat } from "./conditional-formats";
import { validationsToFile, type GridValidation } from "./data-validation";
import { definedNamesXml, type GridName } from "./defined-names";
import { finishPackage } from "./finish-package";
import { putNotes, type GridNotes } from "./notes";
import { styleContext } from "./open-workbook";
import { pack, packPlain, unpackOwn } from "./package-parts";
import { pageToFile, reservedNames } from "./page-layout";
import { finishSheets } from "./finish-sheets";
import { readResource, RESOURCE } from "./resources";
import { columnsToFile, rowsToFile } from "./sheet-geometry";
import { writeSettings } from "./settings";
import { viewToFile } from "./sheet-view";
import { tablesToFile, type GridTables } from "./tables";
import { writeCells } from "./write-cells";

export interface SaveOptions {
  /** The time written into the file; now, unless a build needs equal bytes each time. */
  savedAt?: Date;
  /** The id of the sheet that the file opens on; otherwise that of the opened file, or the first. */
  sheetInFront?: string;
  /** Told of each formula that goes into the file as a text, since no spreadsheet program could read it: "Sheet 1!B4". */
  savedAsText?: (address: string) => void;
}

/**
 * Writes a snapshot as an .xlsx file in the form Excel itself writes.
 * @param computed the results of the formulas and the spilled values, by sheet id
 * @param carry what openWorkbook gave along, if the workbook was opened from a file
 */
export async function saveWorkbook(
  snapshot: IWorkbookData,
  computed: ComputedValues,
  carry?: Carry,
  options: SaveOptions = {},
): Promise<Uint8Array> {
  const savedAt = options.savedAt ?? new Date();
  const extras = readResource<WorkbookExtras>(snapshot, SHEET_EXTRAS_RESOURCE) ?? { sheets: {} };
  const carried = carry && takeApart(carry);
  const properties = fileProperties(extras, savedAt);
  const { bytes, sheets } = carried
    ? await writeOver(carried, snapshot, computed, extras, properties, options)
    : await writeNew(snapshot, computed, extras, properties, options);
  const parts = unpackOwn(bytes);
  finishSheets(parts, snapshot, extras, carried, sheets);
  const names = Object.values(readResource<Record<string, GridName>>(snapshot, RESOURCE.names) ?? {});
  const reserved = snapshot.sheetOrder.flatMap((id, index) =>
    reservedNames(id, snapshot.sheets[id]?.name ?? "", extras.sheets[id], sheets[index]),
  );
  writeSettings(parts, extras.settings);
  finishPackage(parts, definedNamesXml(names, reserved, snapshot));
  return pack(parts, savedAt);
}

interface Written {
  bytes: Uint8Array;
  sheets: (Sheet | undefined)[];
}

async function writeNew(
  snapshot: IWorkbookData,
  computed: ComputedValues,
  extras: WorkbookExtras,
  properties: WorkbookProperties,
  options: SaveOptions,
): Promise<Written> {
  const defaultFont = defaultFontOf(snapshot);
  const sheets = snapshot.sheetOrder.map((id) =>
    sheetModel(id, snapshot, computed, extras, { theme: undefined, defaultFont }, undefined, options),
  );
  return {
    bytes: await writeXlsx({ sheets, properties, defaultFont, activeSheet: firstVisible(snapshot, inFront(snapshot, options)) }),
    sheets: [],
  };
}

async function writeOver(
  carried: CarriedFile,
  snapshot: IWorkbookData,
  computed: ComputedValues,
  extras: WorkbookExtras,
  properties: WorkbookProperties,
  options: SaveOptions,
): Promise<Written> {
  const arranged = arrangeParts(
    carried.parts,
    carried.layout,
    snapshot.sheetOrder.map((id) => carried.entries.get(id)),
  );
  const book = await openXlsx(packPlain(arranged), { readStyles: true });
  const before = snapshot.sheetOrder.map((id, index) => (carried.entries.has(id) ? book.sheets[index] : undefined));
  book.sheets = snapshot.sheetOrder.map(
    (id, index) =>
      ({
        ...before[index],
        rows: [],
        ...sheetModel(id, snapshot, computed, extras, styleContext(book), before[index], options),
      }) as Sheet,
  );
  Object.assign(book, {
    properties,
    namedRanges: undefined,
    dateSystem: "1900",
    hasMacros: false,
    activeSheet: firstVisible(snapshot, inFront(snapshot, options) ?? book.activeSheet),
  });
  return { bytes: await saveXlsx(book), sheets: before };
}

function sheetModel(
  id: string,
  snapshot: IWorkbookData,
  computed: ComputedValues,
  extras: WorkbookExtras,
  styles: StyleContext,
  carried: Sheet | undefined,
  options: SaveOptions,
): WriteSheet {
  const sheet: Partial<IWorksheetData> = snapshot.sheets[id] ?? {};
  const savedAsText = (row: number, column: number): void => options.savedAsText?.(`${sheet.name ?? id}!${cellAddress(row, column)}`);
  const cells = writeCells({ snapshot, sheet, computed: computed[id], carried, styles, savedAsText });
  putNotes(readResource<Record<string, GridNotes>>(snapshot, RESOURCE.notes)?.[id], cells);
  const own = extras.sheets[id];
  return {
    name: sheet.name ?? id,
    rows: [],
    cells,
    columns: columnsToFile(sheet, carried?.columns),
    rowDefs: rowsToFile(sheet, carried?.rowDefs),
    ...viewToFile(sheet, carried),
    ...pageToFile(own, carried),
    conditionalRules: conditionalFormatsToFile(
      readResource<Record<string, GridConditionalFormat[]>>(snapshot, RESOURCE.conditionalFormats)?.[id] ?? [],
      carried?.conditionalRules,
    ),
    dataValidations: validationsToFile(readResource<Record<string, GridValidation[]>>(snapshot, RESOURCE.dataValidation)?.[id] ?? []),
    tables: tablesToFile(readResource<GridTables>(snapshot, RESOURCE.tables)?.[id]?.tables ?? [], own?.tables, sheet, carried),
    // Only opens the place for it; finishSheets writes what it says.
    protection: own?.protection ? {} : undefined,
    images: undefined,
    textBoxes: undefined,
    charts: undefined,
  };
}

function defaultFontOf(snapshot: IWorkbookData): { name?: string; size?: number } {
  const style = typeof snapshot.defaultStyle === "string" ? snapshot.styles[snapshot.defaultStyle] : snapshot.defaultStyle;
  return { ...DEFAULT_FONT, ...(style?.ff ? { name: style.ff } : {}), ...(style?.fs ? { size: style.fs } : {}) };
}

function inFront({ sheetOrder }: IWorkbookData, { sheetInFront }: SaveOptions): number | undefined {
  const index = sheetOrder.indexOf(sheetInFront ?? "");
  return index < 0 ? undefined : index;
}

/** Excel cannot open on a hidden sheet. */
function firstVisible(snapshot: IWorkbookData, wanted = 0): number {
  const visible = (index: number): boolean => !snapshot.sheets[snapshot.sheetOrder[index] ?? ""]?.hidden;
  return visible(wanted) && wanted < snapshot.sheetOrder.length
    ? wanted
    : Math.max(
        0,
        snapshot.sheetOrder.findIndex((_, index) => visible(index)),
      );
}

/** No author and no last editor: a file that is passed around names no person. */
function fileProperties(extras: WorkbookExtras, savedAt: Date): WorkbookProperties {
  const { title, subject, comments } = extras.properties ?? {};
  return {
    ...(title ? { title } : {}),
    ...(subject ? { subject } : {}),
    ...(comments ? { description: comments } : {}),
    modified: savedAt,
  };
}
