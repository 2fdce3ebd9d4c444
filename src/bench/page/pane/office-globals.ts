import { RichApiError } from "../../excel/errors";
import { createExcel } from "../../excel/excel";
import { Host } from "../../excel/host";
import { createOffice } from "../../excel/office";
import type { Engine } from "../../engine/engine";
import { cellEditingOf } from "./cell-editing";

/** Sets up what the pane's frame takes for office.js. Call it once a first workbook is open. */
export function provideOffice(engine: Engine): Host {
  const host = new Host(engine);
  host.cellEditing = cellEditingOf(engine.univerAPI);
  Object.assign(window, { Excel: createExcel(host), Office: createOffice(host), OfficeExtension: { Error: RichApiError } });
  return host;
}
