import type { FUniver } from "@univerjs/core/facade";
import type { Engine } from "../../excel-stand-in/engine/engine";
import type { CellScalar } from "../../excel-stand-in/engine/spills";
import { pageBoxOf, type Box } from "./grid-canvas";
import type { Session } from "./session";
import { listenForShortcuts, type Shortcuts } from "./shortcuts";

/**
 * `window.gylebookBench`: a handle for tests and for looking under the bonnet from the browser's console.
 * The pane's frame uses `listenForShortcuts` of it.
 */
export interface BenchHandle {
  /** Resolves when the first workbook is open, calculated, and the pane is asked for. */
  ready: Promise<void>;
  univerAPI: FUniver;
  engine: Engine;
  session: Session;
  /** What a cell shows, spilled values included; null where it is blank. */
  valueAt(sheet: string, a1: string): CellScalar;
  /** Writes a value, or a formula that starts with "=", and waits until everything is calculated. */
  setValue(sheet: string, a1: string, value: number | string | boolean | null): Promise<void>;
  /** Where a cell lies on the page, in CSS pixels. The cell must be scrolled into view. */
  rectOf(sheet: string, a1: string): Box;
  calculated(): Promise<void>;
  /** The workbook as the bytes of an .xlsx file. */
  save(): Promise<Uint8Array>;
  /** Opens the bytes of an .xlsx file in place of the present workbook, without asking. */
  open(bytes: Uint8Array, fileName: string): Promise<void>;
  /** Writes to the browser's storage now. */
  keepNow(): Promise<void>;
  listenForShortcuts(target: Window): void;
}

export interface HandleParts {
  engine: Engine;
  session: Session;
  shortcuts: Shortcuts;
  ready: Promise<void>;
  keepNow: () => Promise<void>;
}

export function createHandle({ engine, session, shortcuts, ready, keepNow }: HandleParts): BenchHandle {
  const { univerAPI } = engine;
  const sheetNamed = (name: string) => {
    const sheet = univerAPI.getActiveWorkbook()?.getSheetByName(name);
    if (!sheet) throw new Error(`There is no sheet "${name}".`);
    return sheet;
  };
  return {
    ready,
    univerAPI,
    engine,
    session,
    keepNow,
    valueAt: (sheet, a1) => {
      const range = sheetNamed(sheet).getRange(a1);
      return engine.spills.valueAt(range.getUnitId(), range.getSheetId(), range.getRow(), range.getColumn());
    },
    setValue: async (sheet, a1, value) => {
      const range = sheetNamed(sheet).getRange(a1);
      if (typeof value === "string" && value.startsWith("=")) range.setFormula(value);
      else range.setValue(value ?? "");
      await engine.calculated();
    },
    rectOf: (sheet, a1) => pageBoxOf(sheetNamed(sheet), sheetNamed(sheet).getRange(a1)),
    calculated: () => engine.calculated(),
    save: () => session.toFile(),
    open: async (bytes, fileName) => {
      await session.openFile(bytes, fileName);
    },
    listenForShortcuts: (target) => listenForShortcuts(target, shortcuts),
  };
}
