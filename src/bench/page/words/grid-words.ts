import { merge, mergeLocales } from "@univerjs/core";
import conditionalFormattingWords from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import coreWords from "@univerjs/preset-sheets-core/locales/en-US";
import dataValidationWords from "@univerjs/preset-sheets-data-validation/locales/en-US";
import noteWords from "@univerjs/preset-sheets-note/locales/en-US";
import tableWords from "@univerjs/preset-sheets-table/locales/en-US";
import filterWords from "@univerjs/sheets-filter/locale/en-US";
import linkWords from "@univerjs/sheets-hyper-link/locale/en-US";

/**
 * What the grid asks for and its own lists do not hold: it would show the key itself ("sheets-formula.progress.calculating" in the
 * formula bar). tests/bench/grid-words.test.ts walks the keys that it uses.
 */
const missing = {
  "sheets-formula": {
    progress: {
      analyzing: "Looking at what depends on what…",
      calculating: "Calculating…",
      "array-analysis": "Looking at blocks of answers…",
      "array-calculation": "Calculating blocks of answers…",
      done: "Calculated",
    },
    functionList: {
      // The list of logical functions describes LET by other keys than the function itself has.
      LET: {
        functionParameter: {
          name1: { name: "name1", detail: "The first name, for use in the rest of the formula." },
          nameValue1: { name: "name_value1", detail: "What name1 stands for." },
          calculationOrName2: { name: "calculation_or_name2", detail: "The formula that uses the names, or a second name." },
          nameValue2: { name: "name_value2", detail: "What the second name stands for." },
          calculationOrName3: { name: "calculation_or_name3", detail: "The formula that uses the names, or a third name." },
        },
      },
    },
  },
  "sheets-ui": {
    merge: { confirm: { warning: "Merged cells", dismantleMergeCellWarning: "This takes merged cells apart. Go on?" } },
    filter: {
      confirm: {
        error: "Not while rows are filtered out",
        notAllowedToInsertRange: "Take the filter off first: cells cannot be moved here.",
      },
    },
    info: { error: "Error", forceStringInfo: "A number that is kept as text" },
    borderLine: {
      borderTlbr: "One line down to the right",
      borderTlbcTlmr: "Two lines from the upper left corner",
      borderTlbrTlbcTlmr: "Three lines from the upper left corner",
      borderBlTr: "One line up to the right",
      borderMltrBctr: "Two lines to the upper right corner",
    },
  },
  ui: { ribbon: { menu: "Tools of the grid" } },
};

// The grid's own way of putting lists together lets a later part take the place of an earlier one, group and all.
export const gridWords = merge(
  {},
  mergeLocales(coreWords, conditionalFormattingWords, dataValidationWords, noteWords, tableWords, filterWords, linkWords),
  missing,
);
