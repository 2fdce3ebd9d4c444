import { quantity, type UnitSystem } from "../../../functions/quantities";
import { hopPackages } from "../../../core/hops/storage";
import { columnLetters, columnNumber } from "../../grid/plan/addresses";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat, SheetPlan } from "../../grid/plan/sheet-plan";
import { cellText } from "../../grid/words/cell-text";
import { pricedBy, stockKinds, stockUnit, type Shelf, type StockKind } from "./stock-kinds";
import { lotKey, type Draw } from "./stock";
import { bookColumns, bookFirstRow, bookLastRow, storesMark, storesVersion } from "./stores-columns";

const listRows = 24;
const bookColumn = (letters: string): string => `$${letters}$${bookFirstRow}:$${letters}$${bookLastRow}`;
/** What, lot, day, bought, drawn, left, unit, price; a hop's alpha, opened, store, package, alpha today. */
const widths = [22.5, 8, 12, 8.5, 8, 8, 7, 12.5, 8, 11, 10.5, 9.5, 11];
const lastPrinted = "M";
/** Workings: which lot a line is, and how long a hop lay shut and open. */
const workings = { key: "O", shut: "P", open: "Q" } as const;

export interface HopStock {
  readonly alphaPercent: CellContent;
  readonly openedOn: CellContent;
  readonly storedAt: CellContent;
  readonly package: CellContent;
}

export interface StockLine {
  readonly name: string;
  readonly lot?: CellContent;
  /** By which the oldest lot is known: bought, measured, best before. */
  readonly dated?: CellContent;
  readonly bought: number;
  readonly price: CellContent;
  readonly remark?: CellContent;
  readonly hop?: HopStock;
}

export interface StoresOptions {
  readonly sheetName: string;
  readonly units: UnitSystem;
  readonly today: CellContent;
  readonly stock?: Partial<Readonly<Record<StockKind, readonly StockLine[]>>>;
  readonly draws?: readonly Draw[];
}

/** What is on the shelves, what the batches drew, and what must be bought for the batches planned. */
export function planStores({ sheetName, units, today, stock = {}, draws = [] }: StoresOptions): SheetPlan {
  const b = new SheetBuilder();
  b.height(28);
  b.put("A", "Stores", { style: "title", mergeTo: "E" });
  b.put(workings.key, "Plan of this sheet, its units, today:", { style: "hint" });
  b.put(bookColumns.id, storesVersion, { style: "hint", name: storesMark });
  b.put(bookColumns.batch, units, { style: "hint", name: "stores_units" });
  b.put(bookColumns.day, today, { style: "hint", format: "date", name: "stores_today" });
  b.row = 2;
  b.put(
    "A",
    "One line for each lot that you bought. A batch draws its share once, from the pane, the oldest lot first or the one chosen there; what is left calculates.",
    { style: "hint", mergeTo: lastPrinted },
  );
  book(b, draws);
  b.row = 3;
  const worth = stockKinds.map((kind, index) => shelf(b, index + 1, kind, units, stock[kind.kind] ?? []));
  b.put("G", "Worth of what is left", { style: "label", mergeTo: "I" }, 1);
  b.put("J", `=${worth.join("+")}`, { style: "keyResult", format: "money", name: "stores_worth" }, 1);
  b.put("K", "lots without a price left out", { style: "unit", mergeTo: lastPrinted }, 1);
  const listStart = b.row;
  shoppingList(b);
  const paper = units === "us" ? "letter" : "a4";
  return b.build(
    sheetName,
    [...widths, 3, 26, 9, 9, 3, 14, 20, 11, 8, 26, 10, 10, 10, 26],
    {
      area: `A1:${lastPrinted}${b.row - 1}`,
      paper,
      breaksBeforeRow: [listStart],
      footer: `${sheetName} · page &P of &N`,
    },
    2,
  );
}

function book(b: SheetBuilder, draws: readonly Draw[]): void {
  b.put(bookColumns.id, "What the batches drew (written by the pane)", { style: "hint" });
  const headings = {
    id: "Mark",
    batch: "Batch",
    day: "Drawn on",
    kind: "Kind",
    name: "What",
    lot: "Lot",
    amount: "Amount",
    cost: "Cost",
    key: "Lot's key",
  };
  for (const [key, letters] of Object.entries(bookColumns))
    b.put(letters, headings[key as keyof typeof headings], { style: "heading" }, bookFirstRow - 1);
  b.name("stores_draws", `${bookColumns.id}${bookFirstRow}:${bookColumns.key}${bookLastRow}`);
  draws.forEach((draw, index) =>
    bookLine(draw).forEach((content, offset) =>
      b.put(
        columnLetters(columnNumber(bookColumns.id) + offset),
        content,
        { style: "workings", ...(offset === 2 && { format: "date" }) },
        bookFirstRow + index,
      ),
    ),
  );
}

/** A line of the book, in the order of its columns. */
export const bookLine = (draw: Draw): CellContent[] => [
  cellText(draw.id),
  cellText(draw.batch),
  draw.day,
  draw.kind,
  cellText(draw.name),
  cellText(draw.lot),
  draw.amount,
  draw.cost ?? "",
  cellText(lotKey(draw)),
];

function section(b: SheetBuilder, title: string, hint: string): void {
  b.height(18);
  b.put("A", title, { style: "section", mergeTo: "C" });
  b.put("D", hint, { style: "sectionHint", mergeTo: lastPrinted });
  b.row += 1;
}

/** @returns what its lots are worth, as a formula without its equals sign */
function shelf(
  b: SheetBuilder,
  number: number,
  { kind, title, hint, heading, dated, rows }: Shelf,
  units: UnitSystem,
  stock: readonly StockLine[],
): string {
  section(b, `${number}  ${title}`, hint);
  const priced = pricedBy(kind, units);
  const headings: readonly (readonly [string, string])[] = [
    ["A", heading],
    ["B", "Lot"],
    ["C", dated],
    ["D", "Bought"],
    ["E", "Drawn"],
    ["F", "Left"],
    ["G", "Unit"],
    ["H", `Price, ${priced.words}`],
    ...(kind === "hops"
      ? ([
          ["I", "Alpha %"],
          ["J", "Opened on"],
          ["K", `Kept at ${quantity("temperature").unit[units]}`],
          ["L", "Package"],
          ["M", "Alpha today"],
        ] as const)
      : []),
  ];
  for (const [letter, text] of headings) b.put(letter, text, { style: ["A", "B", "G", "L"].includes(letter) ? "heading" : "headingRight" });
  if (kind !== "hops") b.put("I", "Remark", { style: "heading", mergeTo: lastPrinted });
  b.row += 1;
  const first = b.row;
  const last = Math.max(first + rows - 1, first + stock.length - 1);
  const format: NumberFormat = kind === "malt" || (kind === "hops" && units === "us") ? "two" : "whole";
  for (let row = first; row <= last; row += 1) {
    const line = stock[row - first];
    b.put("A", cellText(line?.name ?? ""), { style: "inputText", format: "text" }, row);
    b.put("B", line?.lot ?? "", { style: "inputText", format: "text" }, row);
    b.put("C", line?.dated ?? "", { style: "input", format: "date" }, row);
    b.put("D", line?.bought ?? "", { style: "input", format }, row);
    b.put(
      "E",
      `=IF(A${row}="","",SUMPRODUCT(--(${bookColumn(bookColumns.key)}=$${workings.key}${row}),${bookColumn(bookColumns.amount)}))`,
      { style: "result", format },
      row,
    );
    b.put("F", `=IF(A${row}="","",N(D${row})-N(E${row}))`, { style: "keyResult", format }, row);
    b.put("G", `=IF(A${row}="","","${stockUnit(kind, units)}")`, { style: "resultText", format: "text" }, row);
    b.put("H", line?.price ?? "", { style: "input", format: "money" }, row);
    if (kind === "hops") hopCells(b, row, line?.hop);
    else b.put("I", line?.remark ?? "", { style: "inputText", format: "text", mergeTo: lastPrinted }, row);
    b.put(workings.key, `=IF(A${row}="","","${kind}/"&LOWER(TRIM(A${row}))&"/"&LOWER(TRIM(B${row})))`, { style: "workings" }, row);
  }
  if (kind === "hops") hopAges(b, first, last);
  b.name(`stores_${kind}`, `A${first}:${lastPrinted}${last}`);
  b.highlight({ range: `F${first}:F${last}`, formula: `=N($F${first})<0`, fill: "#7A1F1F", color: "#FFFFFF", bold: true });
  b.between(`D${first}:D${last}`, [0, 100000]);
  b.row = last + 1;
  b.gap();
  return `SUMPRODUCT(F${first}:F${last},H${first}:H${last})${priced.amount === 1 ? "" : `/${priced.amount}`}`;
}

function hopCells(b: SheetBuilder, row: number, hop: HopStock | undefined): void {
  b.put("I", hop?.alphaPercent ?? "", { style: "input", format: "one" }, row);
  b.put("J", hop?.openedOn ?? "", { style: "input", format: "date" }, row);
  b.put("K", hop?.storedAt ?? "", { style: "input", format: "whole" }, row);
  b.put("L", hop?.package ?? "", { style: "inputText" }, row);
  // Days in the closed packet, and days since it was opened.
  b.put(
    workings.shut,
    `=IF(N(C${row})=0,"",MAX(0,IF(N(J${row})>0,MIN(J${row},stores_today),stores_today)-C${row}))`,
    { style: "workings", format: "whole" },
    row,
  );
  b.put(workings.open, `=IF(N(J${row})=0,0,MAX(0,stores_today-J${row}))`, { style: "workings", format: "whole" }, row);
}

/** One lifted call for the closed packets, one for the time since they were opened. */
function hopAges(b: SheetBuilder, first: number, last: number): void {
  const column = (letter: string) => `${letter}${first}:${letter}${last}`;
  const closed = `GYLE.HOPS.AGED(${column("I")},${column(workings.shut)},${column("K")},,${column("L")},stores_units)`;
  for (let row = first; row <= last; row += 1) {
    b.put(
      lastPrinted,
      row === first ? `=GYLE.HOPS.AGED(${closed},${column(workings.open)},${column("K")},,"loose",stores_units)` : "",
      { style: "keyResult", format: "one", ...(row === first && { spillsTo: `${lastPrinted}${last}` }) },
      row,
    );
  }
  b.validate({
    kind: "list",
    range: column("L"),
    choices: hopPackages,
    message: "loose: open or in a plain bag; sealed: airtight foil; barrier: vacuum or gas in barrier foil.",
  });
  b.put(workings.shut, "days shut", { style: "hint" }, first - 1);
  b.put(workings.open, "days open", { style: "hint" }, first - 1);
}

function shoppingList(b: SheetBuilder): void {
  section(b, `${stockKinds.length + 1}  Shopping list`, "For batches that are planned and have drawn nothing yet; the pane writes it anew");
  for (const [letter, text] of [
    ["A", "What"],
    ["B", "Needed"],
    ["C", "Left"],
    ["D", "To buy"],
    ["E", "Unit"],
  ] as const)
    b.put(letter, text, { style: letter === "A" || letter === "E" ? "heading" : "headingRight" });
  b.put("F", "For", { style: "heading", mergeTo: lastPrinted });
  b.row += 1;
  const first = b.row;
  for (let row = first; row < first + listRows; row += 1) {
    b.put("A", "", { style: "resultText", format: "text" }, row);
    for (const letter of ["B", "C"]) b.put(letter, "", { style: "result", format: "two" }, row);
    b.put("D", "", { style: "keyResult", format: "two" }, row);
    b.put("E", "", { style: "resultText", format: "text" }, row);
    b.put("F", "", { style: "resultText", format: "text", mergeTo: lastPrinted }, row);
  }
  b.name("stores_list", `A${first}:F${first + listRows - 1}`);
  b.row = first + listRows;
}
