import type { Engine } from "./engine/engine";
import { createExcel, type ExcelGlobal } from "./excel/excel";
import type { enums } from "./excel/enums";
import { guardLockedCells } from "./excel/guard-locked-cells";
import { Host } from "./excel/host";
import { createOffice, type OfficeGlobal } from "./excel/office";
import type { ChartRecord } from "./excel/sheet-extras";

export interface BenchGlobals {
  Excel: ExcelGlobal & typeof enums;
  Office: OfficeGlobal;
  host: Host;
  /** The charts laid over a sheet, for whoever draws them. */
  chartsOf(sheetId: string): readonly ChartRecord[];
}

/** What Excel would offer to a pane, over the given engine. Call it once a workbook is open. */
export function createBenchGlobals(engine: Engine): BenchGlobals {
  const host = new Host(engine);
  guardLockedCells(host);
  return {
    host,
    Excel: createExcel(host),
    Office: createOffice(host),
    chartsOf: (sheetId) => host.extras.ofSheet(host.unitId, sheetId).charts ?? [],
  };
}
