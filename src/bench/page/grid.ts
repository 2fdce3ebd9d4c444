import { LocaleType } from "@univerjs/core";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import { UniverSheetsNotePreset } from "@univerjs/preset-sheets-note";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-note/lib/index.css";
import "@univerjs/preset-sheets-table/lib/index.css";
import { createUniver, type Grid } from "../../excel-stand-in/engine/create-univer";
import { benchTheme } from "./look/theme";
import { quietTables } from "./look/tables";
import { hiddenMenus } from "./look/hidden-menus";
import { readCellsOnce } from "./read-cells-once";
import { gridWords } from "./words/grid-words";

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
  readCellsOnce();
  return createUniver(presets, {
    theme: benchTheme,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: gridWords },
  });
}
