import type { ICellData, IWorkbookData } from "@univerjs/core";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { openWorkbook } from "../../../src/excel-stand-in/xlsx";
import { columnLetters } from "../../../src/excel-stand-in/xlsx/addresses";
import type { CachedValue, ComputedValues } from "../../../src/excel-stand-in/xlsx/computed-values";

/** Answers that change by themselves, or hang on the program, and functions that the grid does not have: those cells keep Excel's value. */
const NOT_COMPARED =
  /\b(?:TODAY|NOW|RAND|RANDARRAY|RANDBETWEEN|CELL|INFO|LAMBDA|MAP|REDUCE|SCAN|BYROW|BYCOL|MAKEARRAY|ISOMITTED|TRIMRANGE|REGEX(?:TEST|EXTRACT|REPLACE))\s*\(/iu;

export interface Comparison {
  /** How many formula cells were held against Excel's value. */
  compared: number;
  differ: { sheet: string; cell: string; formula: string; excel: CachedValue; here: unknown }[];
}

/** Opens a workbook that Excel has saved, calculates it from nothing, and holds every formula cell against what Excel computed. */
export async function compareWithExcel(bench: HeadlessBench, bytes: Uint8Array): Promise<Comparison> {
  const { snapshot, computed } = await openWorkbook(bytes, { id: `compared-${Math.random().toString(36).slice(2)}` });
  const formulas = takeAwayValues(snapshot, computed);
  await bench.load(snapshot);
  const differ: Comparison["differ"] = [];
  for (const { sheetId, row, column, formula } of formulas) {
    const excel = computed[sheetId]?.values[row]?.[column] ?? null;
    const here = bench.engine.spills.valueAt(snapshot.id, sheetId, row, column);
    if (!agree(excel, here))
      differ.push({ sheet: snapshot.sheets[sheetId]!.name!, cell: `${columnLetters(column)}${row + 1}`, formula, excel, here });
  }
  return { compared: formulas.length, differ };
}

/** Without Excel's values nothing can be right because it was left as it stood. */
function takeAwayValues(
  snapshot: IWorkbookData,
  computed: ComputedValues,
): { sheetId: string; row: number; column: number; formula: string }[] {
  const taken: { sheetId: string; row: number; column: number; formula: string }[] = [];
  for (const [sheetId, { cellData = {} }] of Object.entries(snapshot.sheets)) {
    for (const [rowKey, cells] of Object.entries(cellData)) {
      for (const [columnKey, cell] of Object.entries((cells ?? {}) as Record<string, ICellData | undefined>)) {
        if (!cell?.f) continue;
        const [row, column] = [Number(rowKey), Number(columnKey)];
        if (NOT_COMPARED.test(cell.f)) {
          delete cell.f;
          const kept = computed[sheetId]?.values[row]?.[column];
          if (typeof kept === "object" && kept !== null) cell.v = kept.error;
          continue;
        }
        taken.push({ sheetId, row, column, formula: cell.f });
        delete cell.v;
        delete cell.t;
      }
    }
  }
  return taken;
}

function agree(excel: CachedValue, here: unknown): boolean {
  const wanted = plain(excel);
  const got = plain(here);
  if (typeof wanted === "number" && typeof got === "number") return Math.abs(wanted - got) <= 1e-9 * Math.max(1, Math.abs(wanted));
  return String(wanted).toLowerCase() === String(got).toLowerCase();
}

function plain(value: unknown): number | string {
  if (value === null || value === undefined) return "";
  if (typeof value === "object" && "error" in value) return String(value.error);
  if (typeof value === "boolean") return value ? 1 : 0;
  return value as number | string;
}
