import { ebcFromSrm } from "../../../core/wort/colour-scales";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import { cardFigures, type CardFigure } from "../../batch/figures/card-figures";
import { hasCell, type SheetMarks } from "../../batch/read/batch-marks";
import { columnLetters, columnNumber } from "../../grid/plan/addresses";
import type { CellContent, NumberFormat, StyleName } from "../../grid/plan/sheet-plan";
import { cellText } from "../../grid/words/cell-text";
import { sheetPrefix } from "../../grid/words/sheet-reference";
import { stateFormula } from "./state-formula";

/**
 * One column of the list of batches: what stands above it, and what a row of it says. What is read from a batch sheet is kept
 * beside the list as well, as plain figures, so that a batch whose sheet is gone goes on counting.
 */
export interface SeasonColumn {
  readonly letter: string;
  readonly width: number;
  /** Above the heading, over this column and `groupTo`. */
  readonly group?: readonly [title: string, groupTo: string];
  /** A formula where the words go by the sheet's units. */
  readonly heading: string;
  readonly style: StyleName;
  readonly format: NumberFormat;
  /** Over the names of the batch sheet `at`, for the row `row`, without its equals sign; none where the brewer types. */
  readonly live?: (at: string, row: number, has: OnSheet) => string;
  /** Its last figure is kept; volumes and colours in litres and EBC, whatever the sheet shows. */
  readonly keeps?: "as it is" | "volume" | "colour";
  /** From other columns of the same row, whether the batch has its sheet or not. */
  readonly derived?: (row: number) => string;
}

/** What a batch sheet has that not every one has. */
export interface OnSheet {
  /** A cell for what was filled into kegs. */
  readonly kegCell: boolean;
  /** Its beer may be packaged in parts, which are counted in place of the whole. */
  readonly hasParts: boolean;
}

export const plainSheet: OnSheet = { kegCell: false, hasParts: false };

/** Names by which a sheet tells it. */
export const tellingNames = ["keg_filled", "parts_total"] as const;

/** What each batch sheet has, by the names that were found on it. */
export function onSheets(marks: readonly SheetMarks[]): (sheetName: string) => OnSheet {
  const [kegCell, hasParts] = tellingNames.map((name) => hasCell(marks, name));
  return (sheetName) => ({ kegCell: kegCell!(sheetName), hasParts: hasParts!(sheetName) });
}

/** Columns that the brewer types into; they stay with their batch when rows move. */
export const typedColumns = { left: "V", remark: "W" } as const;
/**
 * Workings, right of what is printed: which sheet and which batch a row is, the step into the units shown, whether the sheet is gone, and the year with
 * which the figures were closed.
 */
export const workingColumns = { sheet: "X", id: "Y", factor: "Z", gone: "AA", closed: "AB" } as const;
/** Where what went into kegs is shown. */
export const kegColumn = "R";
export const lastColumn = "AZ";
/** From here on the brewer may keep columns of their own. */
export const firstOwnColumn = "BB";
/** So many columns stand at 8 points on paper; a remark may be as long as it likes. */
export const printedTo = "V";

const litresPerGallon = quantity("volume").toCore(1, "us");
const ebcPerSrm = ebcFromSrm(1);
/** From the units of the batch sheet into those of the season sheet, for volumes and for colours. */
const factorFormula = (at: string): string =>
  `IF(${at}units=season_units,1,IF(season_units="us",${1 / litresPerGallon},${litresPerGallon}))`;
const colourFactor = (row: number): string => `IF($Z${row}=1,1,IF(season_units="us",${1 / ebcPerSrm},${ebcPerSrm}))`;

const same = (name: string) => (at: string) => `IF(${at}${name}="","",${at}${name})`;
const reachedOr = (reached: string, planned: string) => (at: string) => `IF(N(${at}${reached})>0,${at}${reached},${at}${planned})`;

const volume = reachedOr("volume_reached", "volume");
const colour = reachedOr(cardFigures.colour.reached, cardFigures.colour.plan);
const volumeUnit = 'IF(season_units="us","US gal","L")';

/** Beer that went into kegs: as it was noted where the sheet has a cell for it, or what was in the fermenter, less what stays behind. */
const kegVolume = (at: string, { kegCell, hasParts }: OnSheet): string => {
  const whole = `IF(AND(${at}into="keg",N(${at}packaged_on)>0,N(${at}beer_volume)>0),${at}beer_volume-N(${at}bottling_loss),"")`;
  const noted = kegCell ? `IF(N(${at}keg_filled)>0,${at}keg_filled,${whole})` : whole;
  return hasParts ? `IF(N(${at}parts_total)>0,IF(N(${at}parts_kegged)>0,${at}parts_kegged,""),${noted})` : noted;
};
/** Beer in bottles: millilitres, or fluid ounces. */
const bottledVolume = (at: string, { hasParts }: OnSheet): string => {
  const whole = `N(${at}bottles_filled)*N(${at}bottle_volume)/IF(${at}units="us",128,1000)`;
  return hasParts ? `IF(N(${at}parts_total)>0,N(${at}parts_bottled),${whole})` : whole;
};

/** A figure of the batches' cards, as it was planned and as it was reached. */
function plannedAndReached(
  { label, format, plan, reached }: CardFigure,
  [planned, beside]: readonly [string, string],
  width: number,
  title = label,
): SeasonColumn[] {
  const column = { width, format, keeps: "as it is" } as const;
  return [
    { ...column, letter: planned, group: [title, beside], heading: "planned", style: "result", live: same(plan) },
    { ...column, letter: beside, heading: "reached", style: "keyResult", live: same(reached) },
  ];
}

const listed: readonly SeasonColumn[] = [
  { letter: "A", width: 4, heading: "No.", style: "result", format: "whole", live: same("batch_number"), keeps: "as it is" },
  {
    letter: "B",
    width: 25,
    heading: "Batch (opens its sheet)",
    style: "keyText",
    format: "text",
    live: (at) => `IF(${at}batch_name="","(no name yet)",${at}batch_name)`,
    keeps: "as it is",
  },
  { letter: "C", width: 20, heading: "Style aimed at", style: "resultText", format: "text", live: same("style"), keeps: "as it is" },
  {
    letter: "D",
    width: 10.2,
    heading: "Brewed on",
    style: "result",
    format: "date",
    live: (at) => `IF(N(${at}brewed_on)=0,"",${at}brewed_on)`,
    keeps: "as it is",
  },
  {
    letter: "E",
    width: 13,
    heading: "State",
    style: "resultText",
    format: "text",
    live: (at, row) => stateFormula(at, `$${typedColumns.left}${row}`),
    keeps: "as it is",
  },
  ...plannedAndReached(cardFigures.originalGravity, ["F", "G"], 7.2),
  ...plannedAndReached(cardFigures.finalGravity, ["H", "I"], 7),
  ...plannedAndReached(cardFigures.alcohol, ["J", "K"], 7, "Alcohol % vol"),
  ...plannedAndReached(cardFigures.bitterness, ["L", "M"], 7, "Bitterness IBU"),
  {
    letter: "N",
    width: 5.5,
    group: ["Colour", "O"],
    heading: '=IF(season_units="us","SRM","EBC")',
    style: "result",
    format: "one",
    live: (at, row) => `IF(${colour(at)}="","",${colour(at)}*${colourFactor(row)})`,
    keeps: "colour",
  },
  { letter: "O", width: 5, heading: "looks", style: "swatch", format: "text" },
  {
    letter: "P",
    width: 8,
    group: ["Volume", "P"],
    heading: `=${volumeUnit}`,
    style: "result",
    format: "one",
    live: (at, row) => `IF(N(${volume(at)})=0,"",${volume(at)}*$Z${row})`,
    keeps: "volume",
  },
  {
    letter: "Q",
    width: 6.2,
    group: ["Packaged", "R"],
    heading: "bottles",
    style: "result",
    format: "whole",
    live: (at, _, { hasParts }) => same(hasParts ? "bottles_reached" : "bottles_filled")(at),
    keeps: "as it is",
  },
  {
    letter: "R",
    width: 6.2,
    heading: `="keg "&IF(season_units="us","gal","L")`,
    style: "result",
    format: "one",
    live: (at, row, has) => `IF(${kegVolume(at, has)}="","",${kegVolume(at, has)}*$Z${row})`,
    keeps: "volume",
  },
  {
    letter: "S",
    width: 7,
    group: ["Cost", "T"],
    heading: "batch",
    style: "result",
    format: "money",
    live: same("cost_plan"),
    keeps: "as it is",
  },
  {
    letter: "T",
    width: 6.2,
    heading: `="per "&IF(season_units="us","gal","L")`,
    style: "result",
    format: "money",
    derived: (row) => `IF(OR($E${row}="planned",N($S${row})=0,N($P${row})=0),"",$S${row}/IF(N($AD${row})>0,$AD${row},$P${row}))`,
  },
  { letter: "U", width: 5, heading: "Score", style: "keyResult", format: "one", live: same("score"), keeps: "as it is" },
  { letter: "V", width: 4.5, heading: "left", style: "input", format: "general" },
  { letter: "W", width: 24, heading: "Remark, not printed", style: "inputText", format: "text" },
  { letter: "X", width: 18, heading: "Sheet", style: "workings", format: "text" },
  { letter: "Y", width: 15, heading: "Mark", style: "workings", format: "text" },
  { letter: "Z", width: 10, heading: "Into units", style: "workings", format: "general" },
  { letter: "AA", width: 8, heading: "Gone", style: "workings", format: "general" },
  { letter: "AB", width: 8, heading: "Closed", style: "workings", format: "general" },
  {
    letter: "AC",
    width: 8,
    heading: "Colour of beer brewed",
    style: "workings",
    format: "one",
    derived: (row) => `IF($E${row}="planned","",$N${row})`,
  },
  {
    letter: "AD",
    width: 10,
    heading: "Packaged",
    style: "workings",
    format: "one",
    live: (at, row, has) => `(${bottledVolume(at, has)}+N(${kegVolume(at, has)}))*$Z${row}`,
    keeps: "volume",
  },
  {
    letter: "AE",
    width: 10,
    heading: "Efficiency",
    style: "workings",
    format: "whole",
    live: same("efficiency_reached"),
    keeps: "as it is",
  },
];

const keepers = listed.filter(({ keeps }) => keeps !== undefined);
const firstKept = columnNumber("AF");

/** A column whose figures are kept, and the one in which they are. */
export interface KeptColumn {
  readonly letter: string;
  readonly keeps: NonNullable<SeasonColumn["keeps"]>;
  readonly at: string;
}

export const keptColumns: readonly KeptColumn[] = keepers.map(({ letter, keeps = "as it is" }, index) => ({
  letter,
  keeps,
  at: columnLetters(firstKept + index),
}));

export const keptAt = (letter: string): string => keptColumns.find((one) => one.letter === letter)!.at;

/** All columns of ours, in their order. */
export const columns: readonly SeasonColumn[] = [
  ...listed,
  ...keptColumns.map(({ at, keeps }, index): SeasonColumn => {
    const { heading, group, format } = keepers[index]!;
    const unit = keeps === "volume" ? ", L" : keeps === "colour" ? "EBC" : "";
    const words = heading.startsWith("=") ? "" : heading;
    return { letter: at, width: 9, heading: `${group ? `${group[0]} ` : ""}${words}${unit}`.trim() || "Keg, L", style: "workings", format };
  }),
];

/** Of the units of the season sheet, one litre or one EBC is so much: by this a kept figure is shown. */
const shownIn = {
  "as it is": "",
  volume: `/IF(season_units="us",${litresPerGallon},1)`,
  colour: `/IF(season_units="us",${ebcPerSrm},1)`,
} as const;

/** A figure as it is kept, from what the sheet shows. */
export const asKept = (keeps: KeptColumn["keeps"], shown: number, units: UnitSystem): number =>
  units === "metric" || keeps === "as it is" ? shown : shown * (keeps === "volume" ? litresPerGallon : ebcPerSrm);

/** What is kept of a batch, as the list shows it. */
function keptFormula({ letter, keeps = "as it is" }: SeasonColumn, row: number): string {
  const kept = `$${keptAt(letter)}${row}`;
  return `IF(${kept}="","",${kept}${shownIn[keeps]})`;
}

const gone = (row: number): string => `$${workingColumns.gone}${row}`;

/** A row of a batch that has its sheet: read from there; from what is kept as soon as the sheet is gone, and an error of the sheet's says so here and spoils no sum. */
export function batchCells(sheetName: string, id: string, row: number, has: OnSheet): ReadonlyMap<string, CellContent> {
  const at = sheetPrefix(sheetName);
  const contents = new Map<string, CellContent>();
  for (const column of columns) {
    const formula = column.live?.(at, row, has);
    if (formula !== undefined) contents.set(column.letter, `=IFERROR(${formula},IF(${gone(row)},${keptFormula(column, row)},"error"))`);
    else if (column.derived) contents.set(column.letter, `=${column.derived(row)}`);
  }
  const [name, state] = [columnOf("B"), columnOf("E")];
  // A planned batch that is gone is none: it counts nowhere. Any other was brewed.
  const stateGone = `IF($${keptAt("E")}${row}="planned","planned","${deletedState}")`;
  return contents
    .set("B", linked(sheetName, String(contents.get(name.letter)).slice(1)))
    .set(state.letter, `=IF(${gone(row)},${stateGone},IFERROR(${state.live!(at, row, has)},"error"))`)
    .set(workingColumns.factor, `=IFERROR(${factorFormula(at)},1)`)
    .set(workingColumns.gone, `=ISERROR(ROWS(${at}batch_name))`)
    .set(workingColumns.sheet, cellText(sheetName))
    .set(workingColumns.id, cellText(id));
}

export const deletedState = "sheet deleted";

/** Opens the sheet when it is clicked. */
export const linkTo = (sheetName: string): string => `"#${sheetPrefix(sheetName).replaceAll('"', '""')}A1"`;
const linked = (sheetName: string, name: string): string => `=HYPERLINK(${linkTo(sheetName)},${name})`;

/**
 * A row of a batch whose year is closed, or whose sheet is gone: its figures are what is kept. While there is a sheet, its link and its state
 * go on.
 */
export function keptCells(lastName: string, id: string, row: number, sheetName?: string): ReadonlyMap<string, CellContent> {
  const contents = new Map<string, CellContent>();
  for (const column of columns) {
    if (column.keeps) contents.set(column.letter, `=${keptFormula(column, row)}`);
    else if (column.derived) contents.set(column.letter, `=${column.derived(row)}`);
  }
  if (sheetName !== undefined) {
    const live = batchCells(sheetName, id, row, plainSheet);
    for (const letter of ["B", "E", workingColumns.gone]) contents.set(letter, live.get(letter) ?? "");
  } else contents.set("E", deletedState).set(workingColumns.gone, 1);
  return contents.set(workingColumns.factor, 1).set(workingColumns.sheet, cellText(lastName)).set(workingColumns.id, cellText(id));
}

const columnOf = (letter: string): SeasonColumn => columns.find((column) => column.letter === letter)!;
