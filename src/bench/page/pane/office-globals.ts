import { RichApiError } from "../../../excel-stand-in/excel/errors";
import type { Host } from "../../../excel-stand-in/excel/host";
import { createBenchGlobals } from "../../../excel-stand-in/bench-globals";
import type { Engine } from "../../../excel-stand-in/engine/engine";
import { cellEditingOf } from "./cell-editing";
import { setUpThemeChoice } from "./theme-choice";

/** Sets up what the pane's frame takes for office.js. Call it once a first workbook is open. */
export function provideOffice(engine: Engine): Host {
  const { host, Excel, Office } = createBenchGlobals(engine);
  host.cellEditing = cellEditingOf(engine.univerAPI);
  setUpThemeChoice(host);
  // So that the pane does not speak of Excel's windows and menus here.
  Object.assign(Office.context, { diagnostics: { host: "Excel", platform: "Bench", version: "" } });
  Object.assign(window, { Excel, Office, OfficeExtension: { Error: RichApiError } });
  return host;
}
