import type { ICellData, IWorkbookData } from "@univerjs/core";
import { computedAt, isCachedError, type ComputedValues } from "./computed-values";
import { callsOurFunctions } from "./formula-translation";
import type { GridNotes } from "./notes";
import { makeResource, readResource, RESOURCE } from "./resources";
import { shiftFormula } from "./formula-shift";

const TEXT = 1,
  NUMBER = 2,
  BOOLEAN = 3;

/**
 * A copy for programs without our functions: every formula that calls one becomes its value, with the formula in a note.
 * Formulas of the spreadsheet's own stay. The same `computed` fits the copy: hand both to saveWorkbook.
 */
export function valuesOnlyCopy(snapshot: IWorkbookData, computed: ComputedValues): IWorkbookData {
  const copy = structuredClone(snapshot);
  const notes = readResource<Record<string, GridNotes>>(copy, RESOURCE.notes) ?? {};
  for (const sheetId of copy.sheetOrder) {
    const formulas = ownFormulas(copy.sheets[sheetId]?.cellData ?? {});
    for (const { row, column, cell, formula } of formulas) {
      setValue(cell, valueAt(computed, sheetId, row, column, cell));
      addNote((notes[sheetId] ??= {}), row, column, formula);
      fillSpill(copy, computed, sheetId, row, column);
    }
  }
  copy.resources = [...(copy.resources ?? []).filter((one) => one.name !== RESOURCE.notes), makeResource(RESOURCE.notes, notes)];
  return copy;
}

interface Found {
  row: number;
  column: number;
  cell: ICellData;
  formula: string;
}

/** The cells whose formula calls one of our functions, with the formula written out. */
function ownFormulas(cellData: Record<number, Record<number, ICellData | null>>): Found[] {
  const cells = Object.entries(cellData).flatMap(([row, columns]) =>
    Object.entries(columns ?? {}).flatMap(([column, cell]) => (cell ? [{ row: Number(row), column: Number(column), cell }] : [])),
  );
  const masters = new Map(
    cells.flatMap((one) => (one.cell.f && one.cell.si ? [[one.cell.si, { ...one, formula: one.cell.f }] as const] : [])),
  );
  return cells.flatMap((one) => {
    const master = one.cell.si ? masters.get(one.cell.si) : undefined;
    const formula = one.cell.f ?? (master && shiftFormula(master.formula, one.row - master.row, one.column - master.column));
    return formula && callsOurFunctions(formula) ? [{ ...one, formula }] : [];
  });
}

function valueAt(
  computed: ComputedValues,
  sheetId: string,
  row: number,
  column: number,
  cell: ICellData,
): string | number | boolean | null {
  const value = computedAt(computed, sheetId, row, column);
  return isCachedError(value) ? value.error : (value ?? cell.v ?? null);
}

function setValue(cell: ICellData, value: string | number | boolean | null): void {
  delete cell.f;
  delete cell.si;
  cell.v = typeof value === "boolean" ? Number(value) : value;
  cell.t = value === null ? undefined : typeof value === "number" ? NUMBER : typeof value === "boolean" ? BOOLEAN : TEXT;
}

function fillSpill(copy: IWorkbookData, computed: ComputedValues, sheetId: string, row: number, column: number): void {
  const spill = computed[sheetId]?.spills.find((one) => one.startRow === row && one.startColumn === column);
  const cellData = copy.sheets[sheetId]?.cellData;
  if (!spill || !cellData) return;
  for (let r = spill.startRow; r <= spill.endRow; r++) {
    for (let c = spill.startColumn; c <= spill.endColumn; c++) {
      if (r === row && c === column) continue;
      const cell = ((cellData[r] ??= {})[c] ??= {});
      setValue(cell, valueAt(computed, sheetId, r, c, {}));
    }
  }
}

function addNote(notes: GridNotes, row: number, column: number, formula: string): void {
  const before = notes[row]?.[column];
  const note = before ? `${before.note}\n${formula}` : formula;
  (notes[row] ??= {})[column] = { id: `note-${row},${column}`, row, col: column, width: 260, height: 80, show: false, ...before, note };
}
