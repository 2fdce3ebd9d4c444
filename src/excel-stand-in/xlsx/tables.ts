import type { ICellData, IWorksheetData } from "@univerjs/core";
import type { Sheet, TableDefinition } from "hucre/xlsx";
import type { TableLook } from "../excel/sheet-extras";
import { blockAddress, parseBlock, type Block } from "./addresses";

interface GridColumn {
  id: string;
  displayName: string;
  dataType: string;
  formula: string;
  meta: object;
  style: object;
}

/** One table in the grid's resource. Its range has the heading row but not the totals row. */
export interface GridTable {
  id: string;
  name: string;
  range: Block;
  options: { showHeader?: boolean; showFooter?: boolean; tableStyleId?: string };
  filters: { tableColumnFilterList: unknown[] };
  columns: GridColumn[];
  meta: object;
}
export type GridTables = Record<string, { tables: GridTable[]; tableFilteredOutRows: number[] }>;

/** The look of a table that was made in the grid and never given one. */
const PLAIN_STYLE = "TableStyleLight1";

export function tablesFromFile(sheet: Sheet): { tables: GridTable[]; looks: Record<string, TableLook> } {
  const tables: GridTable[] = [];
  const looks: Record<string, TableLook> = {};
  for (const table of sheet.tables ?? []) {
    const whole = parseBlock(table.range ?? "");
    if (!whole) continue;
    const id = `table-${table.name}`;
    tables.push({
      id,
      name: table.name,
      range: { ...whole, endRow: whole.endRow - (table.showTotalRow ? 1 : 0) },
      options: { showHeader: true, showFooter: false, tableStyleId: "table-default-0" },
      filters: { tableColumnFilterList: [] },
      columns: table.columns.map((column, index) => ({
        id: `column-${index + 1}`,
        displayName: column.name,
        dataType: "string",
        formula: "",
        meta: {},
        style: {},
      })),
      meta: {},
    });
    looks[id] = {
      ...(table.style ? { style: table.style } : {}),
      showBandedRows: table.showRowStripes ?? false,
      showBandedColumns: table.showColumnStripes ?? false,
      showFilterButton: table.showAutoFilter ?? false,
      showTotals: table.showTotalRow ?? false,
    };
  }
  return { tables, looks };
}

export function tablesToFile(
  tables: readonly GridTable[],
  looks: Record<string, TableLook> | undefined,
  sheet: Partial<IWorksheetData>,
  carried: Sheet | undefined,
): TableDefinition[] {
  return tables.map((table) => {
    const look = looks?.[table.id] ?? {};
    const before = carried?.tables?.find((one) => one.name === table.name);
    return {
      name: table.name,
      displayName: table.name,
      range: blockAddress({ ...table.range, endRow: table.range.endRow + (look.showTotals ? 1 : 0) }),
      columns: headings(table, sheet).map((name, index) => {
        const totals = before?.columns[index];
        return {
          name,
          ...(totals?.totalFunction ? { totalFunction: totals.totalFunction } : {}),
          ...(totals?.totalFormula ? { totalFormula: totals.totalFormula } : {}),
          ...(totals?.totalLabel ? { totalLabel: totals.totalLabel } : {}),
        };
      }),
      // "" is no style at all; the library would put its own in for an absent one.
      style: looks?.[table.id] ? (look.style ?? "") : PLAIN_STYLE,
      showRowStripes: look.showBandedRows ?? true,
      showColumnStripes: look.showBandedColumns ?? false,
      showAutoFilter: look.showFilterButton ?? false,
      showTotalRow: look.showTotals ?? false,
    };
  });
}

/** Excel calls a file damaged whose column names differ from the heading cells, or that has a name twice. */
function headings(table: GridTable, sheet: Partial<IWorksheetData>): string[] {
  const used = new Set<string>();
  return Array.from({ length: table.range.endColumn - table.range.startColumn + 1 }, (_, index) => {
    const cell: ICellData | null | undefined = sheet.cellData?.[table.range.startRow]?.[table.range.startColumn + index];
    const wanted = String(cell?.v ?? "").trim() || table.columns[index]?.displayName || `Column${index + 1}`;
    let name = wanted;
    for (let number = 2; used.has(name.toLowerCase()); number++) name = `${wanted}${number}`;
    used.add(name.toLowerCase());
    return name;
  });
}

/** A style name of "" means no style; Excel leaves the attribute out. */
export const withoutEmptyStyle = (tableXml: string): string => tableXml.replace(/(<tableStyleInfo\b[^>]*?) name=""/, "$1");
