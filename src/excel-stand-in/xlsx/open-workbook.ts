import type { ICellData, IStyleData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import { openXlsx, type Sheet, type Workbook } from "hucre/xlsx";
import { SHEET_EXTRAS_RESOURCE, type SheetExtras, type WorkbookExtras } from "../excel/sheet-extras";
import { unreadFormula } from "../engine/stored-formula";
import { cellAddress, LAST_COLUMN, LAST_ROW } from "./addresses";
import { worksheetsOnly } from "./arrange-parts";
import type { Carry } from "./carry";
import { readDrawing } from "./charts/read-drawing";
import { DEFAULT_FONT, type StyleContext } from "./cell-styles";
import type { ComputedValues } from "./computed-values";
import { conditionalFormatsFromFile } from "./conditional-formats";
import { validationsFromFile } from "./data-validation";
import { namesFromFile } from "./defined-names";
import { noteSizes } from "./note-frames";
import { notesFromFile } from "./notes";
import { packPlain, partText, unpack, type PackageParts } from "./package-parts";
import { pageExtrasFromFile } from "./page-layout";
import { protectionFromFile } from "./protection";
import { readCells, widthOf, type CellContext } from "./read-cells";
import { makeResource, RESOURCE } from "./resources";
import { readFragments } from "./sheet-fragments";
import { readSettings } from "./settings";
import { columnsFromFile, ownColumns, rowsFromFile } from "./sheet-geometry";
import { viewFromFile } from "./sheet-view";
import { tablesFromFile } from "./tables";
import { UnreadableFileError } from "./unreadable-file-error";
import { alignNames, refuseLostTexts, refuseMissingParts } from "./whole-package";
import { readLayout, type WorkbookLayout } from "./workbook-layout";
import { childrenOf, descend } from "./xml";

export interface OpenOptions {
  /** Our functions without the namespace, such as "BEER.ABV". Without the list, underscores become dots. */
  functionNames?: readonly string[];
  /** The id of the new workbook; ids of its sheets begin with it. */
  id?: string;
  name?: string;
}

export interface OpenedWorkbook {
  snapshot: IWorkbookData;
  /** Hand this to saveWorkbook, so that what the grid cannot hold survives. Plain data. */
  carry: Carry;
  /** The results that the file kept: what to show, or save again, before anything is calculated. */
  computed: ComputedValues;
  /** The id of the sheet that the file opens on. */
  sheetInFront: string | undefined;
  /** Sentences for the person who opened it: what of the file is not what it was. */
  remarks: string[];
}

/**
 * Opens an .xlsx file.
 * @throws {UnreadableFileError} with a sentence for the person who picked the file
 */
export async function openWorkbook(bytes: Uint8Array, options: OpenOptions = {}): Promise<OpenedWorkbook> {
  const parts = unpack(bytes);
  try {
    alignNames(parts);
    const layout = readLayout(parts);
    refuseMissingParts(parts, layout);
    refuseLostTexts(parts, layout);
    // The library gets the checked parts, never the original archive.
    const book = await openXlsx(packPlain(worksheetsOnly(parts, layout)), { readStyles: true });
    return convert(bytes, parts, layout, book, options);
  } catch (error) {
    if (error instanceof UnreadableFileError) throw error;
    const outside = /Cell reference "([^"]*)" is outside/.exec((error as Error).message)?.[1];
    const reason =
      outside === undefined ? "it is damaged or incomplete" : `its cell ${outside} lies outside every sheet, whose last cell is XFD1048576`;
    throw new UnreadableFileError(reason, { cause: error });
  }
}

export const styleContext = (book: Workbook): StyleContext => ({
  theme: book.themeColors,
  defaultFont: { ...DEFAULT_FONT, ...book.defaultFont },
});

function convert(bytes: Uint8Array, parts: PackageParts, layout: WorkbookLayout, book: Workbook, options: OpenOptions): OpenedWorkbook {
  const id = options.id ?? "workbook";
  const functionNames = options.functionNames ?? [];
  const sheetIds = layout.sheets.map((_, index) => `${id}-sheet${index + 1}`);
  const idOf = (name: string): string | undefined =>
    sheetIds[layout.sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase())];
  const { styles, styleId } = styleTable();
  const context: CellContext = { ...styleContext(book), functionNames, styleId };
  const data = {
    sheets: {} as Record<string, Partial<IWorksheetData>>,
    extras: { sheets: {} } as WorkbookExtras,
    computed: {} as ComputedValues,
  };
  const font = context.defaultFont;
  const defaultStyle = { ...(font.name ? { ff: font.name } : {}), ...(font.size ? { fs: font.size } : {}) };
  const lists = { formats: {}, validation: {}, tables: {}, notes: {} } as Record<
    "formats" | "validation" | "tables" | "notes",
    Record<string, object>
  >;
  layout.sheets.forEach(({ name, part }, index) => {
    const sheet = book.sheets.find((one) => one.name === name);
    const sheetId = sheetIds[index]!;
    if (!sheet) throw new Error(`the sheet ${name} was not read`);
    const fragments = readFragments(partText(parts, part) ?? "");
    const { cellData, computed } = readCells(sheet, context);
    const grid: Partial<IWorksheetData> = {
      // The grid looks for the usual font here, and not in the workbook, once a cell has any look of its own.
      id: sheetId,
      defaultStyle,
      ...viewFromFile(sheet, book.themeColors),
      ...fragments.sizes,
      cellData,
      columnData: columnsFromFile(sheet.columns),
      rowData: rowsFromFile(sheet.rowDefs),
      ...roomFor(sheet),
    };
    const { tables, looks } = tablesFromFile(sheet);
    const drawing = readDrawing(parts, part, grid, idOf);
    const protection = protectionFromFile(fragments.protection);
    const charts = (drawing?.items ?? []).flatMap((item) => item.chart ?? []);
    const extras: SheetExtras = {
      ...pageExtrasFromFile(sheet, fragments.blackAndWhite),
      ...(charts.length > 0 ? { charts } : {}),
      ...(Object.keys(looks).length > 0 ? { tables: looks } : {}),
      ...(protection ? { protection } : {}),
    };
    data.sheets[sheetId] = grid;
    data.computed[sheetId] = computed;
    if (Object.keys(extras).length > 0) data.extras.sheets[sheetId] = extras;
    const formats = conditionalFormatsFromFile(sheet.conditionalRules, context, functionNames);
    const validation = validationsFromFile(sheet.dataValidations, functionNames);
    const notes = notesFromFile(sheet, noteSizes(parts, part, grid));
    if (formats.length > 0) lists.formats[sheetId] = formats;
    if (validation.length > 0) lists.validation[sheetId] = validation;
    if (tables.length > 0) lists.tables[sheetId] = { tables, tableFilteredOutRows: [] };
    if (Object.keys(notes).length > 0) lists.notes[sheetId] = notes;
  });
  const { title, subject, description } = book.properties ?? {};
  if (title || subject || description) {
    data.extras.properties = {
      ...(title ? { title } : {}),
      ...(subject ? { subject } : {}),
      ...(description ? { comments: description } : {}),
    };
  }
  const settings = readSettings(parts, layout.part);
  if (settings) data.extras.settings = settings;
  const snapshot: IWorkbookData = {
    id,
    name: options.name ?? "Workbook",
    appVersion: "0.25.1",
    locale: "enUS" as IWorkbookData["locale"],
    styles,
    sheetOrder: sheetIds,
    sheets: data.sheets,
    defaultStyle,
    resources: [
      makeResource(RESOURCE.conditionalFormats, lists.formats),
      makeResource(RESOURCE.dataValidation, lists.validation),
      makeResource(RESOURCE.tables, lists.tables),
      makeResource(RESOURCE.notes, lists.notes),
      makeResource(RESOURCE.names, namesFromFile(layout.root, fileOrder(layout, sheetIds), functionNames)),
      makeResource(SHEET_EXTRAS_RESOURCE, data.extras),
    ],
  };
  return {
    snapshot,
    carry: { bytes, sheetIds },
    computed: data.computed,
    sheetInFront: sheetInFront(layout, sheetIds, data.sheets),
    remarks: remarksOn(layout, snapshot),
  };
}

function remarksOn({ others }: WorkbookLayout, { sheetOrder, sheets }: IWorkbookData): string[] {
  const unread = sheetOrder.flatMap((id) =>
    Object.entries(sheets[id]?.cellData ?? {}).flatMap(([row, cells]) =>
      Object.entries(cells as Record<string, ICellData>)
        .filter(([, cell]) => unreadFormula(cell) !== undefined)
        .map(([column]) => `${sheets[id]!.name}!${cellAddress(Number(row), Number(column))}`),
    ),
  );
  return [
    ...(unread.length > 0
      ? [
          `A formula too long or too deeply nested stands in ${someOf(unread)}. It shows the value that was saved with it, does not follow what you change, and goes back into the file as it was.`,
        ]
      : []),
    ...(others.length > 0
      ? [
          `No cells are on ${someOf(others.map((name) => `“${name}”`))}: such a sheet is not shown here, and not in a file that is saved here.`,
        ]
      : []),
  ];
}

/** A list that a notice can hold. */
export const someOf = (items: readonly string[]): string =>
  items.length > 5 ? `${items.slice(0, 5).join(", ")} and ${items.length - 5} more` : items.join(", ");

/** A sheet's number in the file counts every sheet, also those of charts, which are not in the layout. */
function fileOrder(layout: WorkbookLayout, sheetIds: readonly string[]): string[] {
  const names =
    layout.root.children.find((child) => child.name.endsWith("sheets"))?.children.map((sheet) => sheet.attributes.name ?? "") ?? [];
  return names.map((name) => sheetIds[layout.sheets.findIndex((sheet) => sheet.name === name)] ?? "");
}

function sheetInFront(
  layout: WorkbookLayout,
  sheetIds: readonly string[],
  sheets: Readonly<Record<string, Partial<IWorksheetData>>>,
): string | undefined {
  const view = childrenOf(descend(layout.root, "bookViews"), "workbookView")[0];
  const id = fileOrder(layout, sheetIds)[Number(view?.attributes.activeTab ?? 0)];
  return id && !sheets[id]?.hidden ? id : undefined;
}

function styleTable(): { styles: Record<string, IStyleData>; styleId(style: IStyleData): string } {
  const styles: Record<string, IStyleData> = {};
  const ids = new Map<string, string>();
  return {
    styles,
    styleId: (style) => {
      const key = JSON.stringify(style);
      const known = ids.get(key);
      if (known) return known;
      const id = `s${ids.size + 1}`;
      ids.set(key, id);
      styles[id] = style;
      return id;
    },
  };
}

/** Some empty rows and columns beyond the contents, to work in. */
function roomFor(sheet: Sheet): { rowCount: number; columnCount: number } {
  return {
    rowCount: Math.min(LAST_ROW + 1, Math.max(200, sheet.rows.length + 100)),
    columnCount: Math.min(LAST_COLUMN + 1, Math.max(26, widthOf(sheet) + 10, ownColumns(sheet.columns ?? []))),
  };
}
