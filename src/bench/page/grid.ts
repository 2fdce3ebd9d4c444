import { LocaleType, mergeLocales } from "@univerjs/core";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionalFormattingWords from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreWords from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import dataValidationWords from "@univerjs/preset-sheets-data-validation/locales/en-US";
import { UniverSheetsNotePreset } from "@univerjs/preset-sheets-note";
import noteWords from "@univerjs/preset-sheets-note/locales/en-US";
import tableWords from "@univerjs/preset-sheets-table/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-note/lib/index.css";
import "@univerjs/preset-sheets-table/lib/index.css";
import { createUniver, type Grid } from "../../excel-stand-in/engine/create-univer";
import { benchTheme } from "./look/theme";
import { quietTables } from "./look/tables";
import { hiddenMenus } from "./look/hidden-menus";

/** The grid with everything that a batch sheet uses: tables, notes, conditional formats, validation. */
export function createPageGrid(container: HTMLElement): Grid {
  const presets = [
    UniverSheetsCorePreset({ container, menu: hiddenMenus, ribbonType: "simple" }),
    UniverSheetsConditionalFormattingPreset(),
    // A search box would take the keyboard from whoever types into a cell with choices.
    UniverSheetsDataValidationPreset({ showSearchOnDropdown: false }),
    quietTables(),
    UniverSheetsNotePreset(),
  ];
  return createUniver(presets, {
    theme: benchTheme,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(coreWords, conditionalFormattingWords, dataValidationWords, noteWords, tableWords) },
  });
}
