import { ebcFromSrm } from "../../../core/wort/colour-scales";
import { quantity } from "../../../functions/quantities";
import type { CellContent, NumberFormat, StyleName } from "../../grid/plan/sheet-plan";
import { sheetPrefix } from "../../grid/words/sheet-reference";
import { stateFormula } from "./state-formula";

/** One column of the list of batches: what stands above it, and what a row of it says about a batch sheet. */
export interface SeasonColumn {
  readonly letter: string;
  readonly width: number;
  /** Above the heading, over this column and `groupTo`. */
  readonly group?: readonly [title: string, groupTo: string];
  /** A formula where the words go by the sheet's units. */
  readonly heading: string;
  readonly style: StyleName;
  readonly format: NumberFormat;
  /** Formula over the names of the batch sheet `at`, for the row `row`; none where the brewer types. */
  readonly formula?: (at: string, row: number) => string;
}

/** Columns that the brewer types into; they stay with their batch when rows move. */
export const typedColumns = { left: "U", remark: "V" } as const;
/** Workings, right of what is printed: which sheet and which batch a row is, and the step into the units shown. */
export const workingColumns = { sheet: "W", id: "X", factor: "Y" } as const;
export const lastColumn = "Y";
/** From here on the brewer may keep columns of their own. */
export const firstOwnColumn = "AA";
export const printedTo = "V";

const litresPerGallon = quantity("volume").toCore(1, "us");
/** From the units of the batch sheet into those of the season sheet, for volumes and for colours. */
const factorFormula = (at: string): string =>
  `=IF(${at}units=season_units,1,IF(season_units="us",${1 / litresPerGallon},${litresPerGallon}))`;
const colourFactor = (row: number): string => `IF($Y${row}=1,1,IF(season_units="us",${1 / ebcFromSrm(1)},${ebcFromSrm(1)}))`;

/** An error on the batch sheet says so here and spoils no sum. */
const orError = (formula: string): string => `=IFERROR(${formula},"error")`;
const same = (name: string) => (at: string) => orError(`IF(${at}${name}="","",${at}${name})`);
const reachedOr = (reached: string, planned: string) => (at: string) => `IF(N(${at}${reached})>0,${at}${reached},${at}${planned})`;

const volume = reachedOr("volume_reached", "volume");
const colour = reachedOr("colour_reached", "colour_plan");

export const columns: readonly SeasonColumn[] = [
  { letter: "A", width: 4, heading: "No.", style: "result", format: "general", formula: same("batch_number") },
  {
    letter: "B",
    width: 27,
    heading: "Batch",
    style: "keyText",
    format: "text",
    formula: (at) => `=IFERROR(IF(${at}batch_name="","(no name yet)",${at}batch_name),"(its sheet is gone)")`,
  },
  { letter: "C", width: 18, heading: "Style aimed at", style: "resultText", format: "text", formula: same("style") },
  {
    letter: "D",
    width: 10.5,
    heading: "Brewed on",
    style: "result",
    format: "date",
    formula: (at) => orError(`IF(N(${at}brewed_on)=0,"",${at}brewed_on)`),
  },
  {
    letter: "E",
    width: 13,
    heading: "State",
    style: "resultText",
    format: "text",
    formula: (at, row) => orError(stateFormula(at, `$${typedColumns.left}${row}`)),
  },
  {
    letter: "F",
    width: 7.5,
    group: ["Original gravity", "G"],
    heading: "planned",
    style: "result",
    format: "gravity",
    formula: same("og_plan"),
  },
  { letter: "G", width: 7.5, heading: "reached", style: "keyResult", format: "gravity", formula: same("og_shown") },
  {
    letter: "H",
    width: 7.5,
    group: ["Final gravity", "I"],
    heading: "planned",
    style: "result",
    format: "gravity",
    formula: same("fg_plan"),
  },
  { letter: "I", width: 7.5, heading: "reached", style: "keyResult", format: "gravity", formula: same("fg_reached") },
  { letter: "J", width: 7.5, group: ["Alcohol % vol", "K"], heading: "planned", style: "result", format: "one", formula: same("abv_plan") },
  { letter: "K", width: 7.5, heading: "reached", style: "keyResult", format: "one", formula: same("abv_reached") },
  {
    letter: "L",
    width: 7.5,
    group: ["Bitterness IBU", "M"],
    heading: "planned",
    style: "result",
    format: "whole",
    formula: same("ibu_plan"),
  },
  { letter: "M", width: 7.5, heading: "reached", style: "keyResult", format: "whole", formula: same("ibu_reached") },
  {
    letter: "N",
    width: 6.5,
    group: ["Colour", "O"],
    heading: '=IF(season_units="us","SRM","EBC")',
    style: "result",
    format: "one",
    formula: (at, row) => orError(`IF(${colour(at)}="","",${colour(at)}*${colourFactor(row)})`),
  },
  { letter: "O", width: 7, heading: "looks", style: "swatch", format: "text" },
  {
    letter: "P",
    width: 8,
    group: ["Volume", "P"],
    heading: '=IF(season_units="us","US gal","L")',
    style: "result",
    format: "one",
    formula: (at, row) => orError(`IF(N(${volume(at)})=0,"",${volume(at)}*$Y${row})`),
  },
  { letter: "Q", width: 7, heading: "Bottles", style: "result", format: "whole", formula: same("bottles_filled") },
  { letter: "R", width: 7, group: ["Cost", "S"], heading: "batch", style: "result", format: "money", formula: same("cost_plan") },
  { letter: "S", width: 6.5, heading: "bottle", style: "result", format: "money", formula: same("cost_each") },
  { letter: "T", width: 6, heading: "Score", style: "keyResult", format: "one", formula: same("score") },
  { letter: "U", width: 5, group: ["Yours", "V"], heading: "left", style: "input", format: "whole" },
  { letter: "V", width: 20, heading: "remark", style: "inputText", format: "text" },
  { letter: "W", width: 18, heading: "Sheet", style: "workings", format: "text" },
  { letter: "X", width: 15, heading: "Mark", style: "workings", format: "text" },
  {
    letter: "Y",
    width: 10,
    heading: "Into units",
    style: "workings",
    format: "general",
    formula: (at) => orError(factorFormula(at).slice(1)),
  },
];

/** The contents of a batch's row in the list, without what the brewer types. */
export function batchCells(sheetName: string, id: string, row: number): ReadonlyMap<string, CellContent> {
  const at = sheetPrefix(sheetName);
  const contents = new Map<string, CellContent>(
    columns.flatMap(({ letter, formula }) => (formula ? [[letter, formula(at, row)] as const] : [])),
  );
  return contents.set(workingColumns.sheet, sheetName).set(workingColumns.id, id);
}
