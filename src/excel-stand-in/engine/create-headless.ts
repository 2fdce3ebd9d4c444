import { LocaleType } from "@univerjs/core";
import { UniverSheetsNodeCorePreset } from "@univerjs/preset-sheets-node-core";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import "@univerjs/sheets-conditional-formatting/facade";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import "@univerjs/sheets-note/facade";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import "@univerjs/sheets-table/facade";
import { createUniver, type Grid, type Preset } from "./create-univer";
import "./facades";

/** The grid's engine without a page: formulas, tables, notes, conditional formats and validation in plain Node. */
export function createHeadlessGrid(): Grid {
  const plugins = [UniverSheetsTablePlugin, UniverSheetsNotePlugin, UniverSheetsConditionalFormattingPlugin];
  const presets = [UniverSheetsNodeCorePreset(), { plugins }] as unknown as Preset[];
  return createUniver(presets, { locale: LocaleType.EN_US, locales: {} });
}
