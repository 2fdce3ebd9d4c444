import type { IWorkbookData, Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import type { CustomFunctionsGlobal } from "./engine/custom-functions";
import { createBenchGlobals, type BenchGlobals } from "./bench-globals";
import { collectComputed } from "./computed";
import { saveWorkbook } from "./xlsx";
import { createHeadlessGrid } from "./engine/create-headless";
import { Engine } from "./engine/engine";
import type { FunctionsMetadata } from "./engine/custom-functions-metadata";
import type { CellScalar } from "./engine/spills";

export interface HeadlessOptions {
  /** The content of functions.json. */
  metadata: FunctionsMetadata;
  /** The text of functions.js, a classic script that calls `CustomFunctions.associate`. */
  functionsScript?: string;
  snapshot?: Partial<IWorkbookData>;
}

export interface HeadlessBench extends BenchGlobals {
  CustomFunctions: CustomFunctionsGlobal;
  engine: Engine;
  univer: Univer;
  univerAPI: FUniver;
  /** Waits until everything entered so far is calculated. */
  calculate(): Promise<void>;
  /** Opens a workbook in place of the present one and calculates it. */
  load(snapshot: Partial<IWorkbookData>): Promise<void>;
  snapshot(): IWorkbookData;
  /** The computed value of a cell, spilled values included; null where it is blank. */
  valueAt(sheetName: string, a1: string): CellScalar;
  /** What a pane asked to open as another workbook: the bytes of each, or undefined for an empty one. */
  readonly opened: (Uint8Array | undefined)[];
  dispose(): void;
}

/** The bench without a page: the same engine, functions and Excel stand-in, in Node. */
export function createHeadlessBench({ metadata, functionsScript, snapshot = {} }: HeadlessOptions): HeadlessBench {
  const engine = new Engine(createHeadlessGrid(), { metadata });
  const { CustomFunctions } = engine.functions;
  // eslint-disable-next-line no-new-func, @typescript-eslint/no-implied-eval -- the script is our own build output and expects its globals by name
  if (functionsScript) new Function("CustomFunctions", "self", functionsScript)(CustomFunctions, { CustomFunctions });
  engine.openWorkbook(snapshot);
  const globals = createBenchGlobals(engine);
  const workbook = () => engine.univerAPI.getActiveWorkbook()!;
  const opened: HeadlessBench["opened"] = [];
  globals.host.files = {
    save: async () => {
      await engine.calculated();
      return saveWorkbook(workbook().save(), collectComputed(engine, workbook().save()));
    },
    openAnother: async (bytes) => {
      opened.push(bytes);
    },
  };
  return {
    ...globals,
    opened,
    CustomFunctions,
    engine,
    univer: engine.univer,
    univerAPI: engine.univerAPI,
    calculate: () => engine.calculated(),
    load: (data) => {
      engine.openWorkbook(data);
      return engine.calculated();
    },
    snapshot: () => workbook().save(),
    valueAt: (sheetName, a1) => {
      const sheet = workbook().getSheetByName(sheetName);
      if (!sheet) throw new Error(`There is no sheet "${sheetName}".`);
      const range = sheet.getRange(a1);
      return engine.spills.valueAt(workbook().getId(), sheet.getSheetId(), range.getRow(), range.getColumn());
    },
    dispose: () => engine.univer.dispose(),
  };
}
