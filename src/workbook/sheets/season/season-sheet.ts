import type { UnitSystem } from "../../../functions/quantities";
import { address, columnNumber, position } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";
import { sheetOfName } from "../../grid/words/sheet-reference";
import { moved } from "./own-cells";
import { asKept, firstOwnColumn, kegColumn, keptColumns, lastColumn, linkTo, typedColumns, workingColumns } from "./season-columns";
import { firstRowName, mostBatches } from "./season-plan";
import type { PresentRow } from "./season-rows";

/** The list as it stands on the sheet. */
export interface PresentList {
  readonly firstRow: number;
  readonly rows: readonly PresentRow[];
  /** How many columns to the right of ours hold something in any row of the list, or below it. */
  readonly ownWidth: number;
}

const at = (letter: string): number => columnNumber(letter);

/** Where a list keeps what this reads; the first plan had other columns, and kept nothing. */
export interface ListColumns {
  readonly left: string;
  readonly remark: string;
  readonly sheet: string;
  readonly id: string;
  readonly firstOwn: string;
  readonly keeps: boolean;
}
const today: ListColumns = { ...typedColumns, sheet: workingColumns.sheet, id: workingColumns.id, firstOwn: firstOwnColumn, keeps: true };

/** Reads the list from its first row down to the last that is one of ours; a row that was emptied between them is none. */
export function presentList(sheet: NamedCells, columns: ListColumns = today): PresentList {
  const firstRow = sheet.area(firstRowName).from.row;
  const formula = (row: number, letter: string): CellContent => plain(sheet.formulaAt(row, at(letter)));
  const isRow = (row: number): boolean =>
    formula(row, columns.sheet) !== "" || sheetOfName(String(formula(row, "B")), "batch_name") !== undefined;
  let rowCount = 0;
  for (let index = 0; index < mostBatches; index += 1) if (isRow(firstRow + index)) rowCount = index + 1;
  const ownWidth = widthBeyond(sheet, firstRow, columns.firstOwn);
  const units = sheet.text("season_units") === "us" ? "us" : "metric";
  const rows = Array.from({ length: rowCount }, (_, index): PresentRow => {
    const row = firstRow + index;
    const name = String(formula(row, "B"));
    const sheetName = sheetOfName(name, "batch_name");
    const kept = columns.keeps ? keptColumns.map(({ at: letters }) => plain(sheet.at(row, at(letters)))) : [];
    const closed = columns.keeps ? formula(row, workingColumns.closed) : "";
    return {
      sheetName,
      id: String(formula(row, columns.id)),
      lastName: String(formula(row, columns.sheet)) || (sheetName ?? ""),
      settled: sheetName === undefined ? !/^=HYPERLINK\(/i.test(name) : name.includes(linkTo(sheetName)),
      kegCell: columns.keeps && String(formula(row, kegColumn)).includes("keg_filled"),
      hasParts: columns.keeps && String(formula(row, kegColumn)).includes("parts_total"),
      letGo: sheetName === undefined && name === "",
      closed: typeof closed === "number" ? closed : "",
      kept,
      shown: columns.keeps ? shownIn(sheet, row, kept, units) : [],
      left: formula(row, columns.left),
      remark: formula(row, columns.remark),
      own: Array.from({ length: ownWidth }, (_2, offset) => {
        const column = at(columns.firstOwn) + offset;
        return moved.up(plain(sheet.formulaAt(row, column)), address(row, column));
      }),
    };
  });
  return { firstRow, rows, ownWidth };
}

/** What the list shows of a batch, as it is kept. Where its sheet is gone or shows an error, what was kept before stays. */
function shownIn(sheet: NamedCells, row: number, kept: readonly CellContent[], units: UnitSystem): readonly CellContent[] {
  const isGone = sheet.at(row, at(workingColumns.gone)) !== false;
  return keptColumns.map(({ letter, keeps }, index) => {
    const shown = sheet.at(row, at(letter));
    if (isGone || shown === "error" || (typeof shown === "string" && shown.startsWith("#"))) return kept[index] ?? "";
    return typeof shown === "number" ? asKept(keeps, shown, units) : plain(shown);
  });
}

/** The first cell at or below `from` in our columns or the brewer's own that holds something, down to `to`. */
export function inTheWay(sheet: NamedCells, from: number, to: number, ownWidth: number): string | undefined {
  for (let row = from; row <= to; row += 1) {
    for (let column = 1; column < at(firstOwnColumn) + ownWidth; column += 1) {
      if (column > at(lastColumn) && column < at(firstOwnColumn)) continue;
      if (sheet.formulaAt(row, column) !== "") return address(row, column);
    }
  }
  return undefined;
}

function widthBeyond(sheet: NamedCells, firstRow: number, firstOwn: string): number {
  let width = 0;
  for (const { address: filled } of sheet.filled()) {
    const { row, column } = position(filled);
    if (row >= firstRow) width = Math.max(width, column - at(firstOwn) + 1);
  }
  return width;
}

const plain = (content: number | string | boolean): CellContent =>
  typeof content === "boolean" ? `=${String(content).toUpperCase()}` : content;
