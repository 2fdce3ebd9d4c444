import { RichApiError } from "../../excel/errors";
import type { Host } from "../../excel/host";
import { createBenchGlobals } from "../../bench-globals";
import type { Engine } from "../../engine/engine";
import { cellEditingOf } from "./cell-editing";
import { setUpThemeChoice } from "./theme-choice";

/** Sets up what the pane's frame takes for office.js. Call it once a first workbook is open. */
export function provideOffice(engine: Engine): Host {
  const { host, Excel, Office } = createBenchGlobals(engine);
  host.cellEditing = cellEditingOf(engine.univerAPI);
  setUpThemeChoice(host);
  Object.assign(window, { Excel, Office, OfficeExtension: { Error: RichApiError } });
  return host;
}
