import { quantity, type UnitSystem } from "../../../functions/quantities";
import { hopPackages } from "../../../core/hops/storage";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat, SheetPlan } from "../../grid/plan/sheet-plan";
import { stockKinds, type StockKind } from "./stock-kinds";

/** Marks the sheet, and tells which plan it follows. */
export const storesMark = "gylebook_stores";
export const storesVersion = 1;
export const listRows = 24;
/** The book of what was drawn stands to the right and grows downwards. */
export const drawsFirstRow = 4;
const drawsLastRow = 3003;
const draws = `$Q$${drawsFirstRow}:$V$${drawsLastRow}`;
const drawsColumn = (letter: string): string => `$${letter}$${drawsFirstRow}:$${letter}$${drawsLastRow}`;
const widths = [27, 9.5, 8, 8.5, 12, 7.5, 8, 10.5, 10.5, 9.5, 9.5, 10.5];

export interface HopStock {
  readonly crop: CellContent;
  readonly alphaPercent: CellContent;
  readonly measuredOn: CellContent;
  readonly openedOn: CellContent;
  readonly storedAt: CellContent;
  readonly package: CellContent;
}

export interface StockLine {
  readonly name: string;
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
}

/** What is on the shelves, what the batches drew, and what must be bought for the batches planned. */
export function planStores({ sheetName, units, today, stock = {} }: StoresOptions): SheetPlan {
  const b = new SheetBuilder();
  b.height(28);
  b.put("A", "Stores", { style: "title", mergeTo: "E" });
  b.put("N", "Plan of this sheet, its units, today:", { style: "hint" });
  b.put("Q", storesVersion, { style: "hint", name: storesMark });
  b.put("R", units, { style: "hint", name: "stores_units" });
  b.put("S", today, { style: "hint", format: "date", name: "stores_today" });
  b.row = 2;
  b.put(
    "A",
    "Write what you bought. A batch draws its share once, from the pane; what is left calculates, and batches planned make the shopping list.",
    { style: "hint", mergeTo: "L" },
  );
  b.put("Q", "What the batches drew (written by the pane)", { style: "hint" });
  for (const [letter, text] of [
    ["Q", "Mark"],
    ["R", "Batch"],
    ["S", "Drawn on"],
    ["T", "Kind"],
    ["U", "What"],
    ["V", "Amount"],
  ] as const)
    b.put(letter, text, { style: "heading" }, drawsFirstRow - 1);
  b.name("stores_draws", draws.replaceAll("$", ""));
  b.row = 3;
  stockKinds.forEach((kind, index) => shelf(b, index + 1, kind, units, stock[kind.kind] ?? []));
  const listStart = b.row;
  shoppingList(b);
  const last = b.row - 1;
  const paper = units === "us" ? "letter" : "a4";
  return b.build(
    sheetName,
    [...widths, 3, 9, 9, 3, 14, 20, 11, 8, 26, 10],
    {
      area: `A1:L${last}`,
      paper,
      breaksBeforeRow: [listStart],
      footer: `${sheetName} · page &P of &N`,
    },
    2,
  );
}

function section(b: SheetBuilder, title: string, hint: string): void {
  b.height(18);
  b.put("A", title, { style: "section", mergeTo: "C" });
  b.put("D", hint, { style: "sectionHint", mergeTo: "L" });
  b.row += 1;
}

function shelf(
  b: SheetBuilder,
  number: number,
  { kind, title, hint, heading, rows, measure }: (typeof stockKinds)[number],
  units: UnitSystem,
  stock: readonly StockLine[],
): void {
  section(b, `${number}  ${title}`, hint);
  const unit = measure ? quantity(measure).unit[units] : "";
  const priced = kind === "hops" ? (units === "us" ? "oz" : "100 g") : unit || "one";
  const headings: [string, string][] = [
    ["A", heading],
    ["B", `Bought ${unit}`.trim()],
    ["C", "Drawn"],
    ["D", "Left"],
    ["E", `Price of ${priced}`],
  ];
  if (kind === "hops")
    headings.push(
      ["F", "Crop"],
      ["G", "Alpha %"],
      ["H", "Measured"],
      ["I", "Opened"],
      ["J", `Kept at ${quantity("temperature").unit[units]}`],
      ["K", "Package"],
      ["L", "Alpha now"],
    );
  for (const [letter, text] of headings) b.put(letter, text, { style: letter === "A" || letter === "K" ? "heading" : "headingRight" });
  if (kind !== "hops") b.put("F", "Remark", { style: "heading", mergeTo: "L" });
  b.row += 1;
  const first = b.row;
  const last = first + rows - 1;
  const format: NumberFormat = kind === "malt" ? "two" : kind === "hops" && units === "us" ? "two" : "whole";
  for (let index = 0; index < rows; index += 1) {
    const row = first + index;
    const line = stock[index];
    b.put("A", line?.name ?? "", { style: "inputText", format: "text" }, row);
    b.put("B", line?.bought ?? "", { style: "input", format }, row);
    b.put(
      "C",
      `=IF(A${row}="","",SUMIFS(${drawsColumn("V")},${drawsColumn("T")},"${kind}",${drawsColumn("U")},A${row}))`,
      { style: "result", format },
      row,
    );
    b.put("D", `=IF(A${row}="","",N(B${row})-N(C${row}))`, { style: "keyResult", format }, row);
    b.put("E", line?.price ?? "", { style: "input", format: "money" }, row);
    if (kind === "hops") hopCells(b, row, line?.hop);
    else b.put("F", line?.remark ?? "", { style: "inputText", format: "text", mergeTo: "L" }, row);
  }
  if (kind === "hops") hopAges(b, first, last);
  b.name(`stores_${kind}`, `A${first}:L${last}`);
  b.highlight({ range: `D${first}:D${last}`, formula: `=N($D${first})<0`, fill: "#7A1F1F", color: "#FFFFFF", bold: true });
  b.between(`B${first}:B${last}`, [0, 100000]);
  b.row = last + 1;
  b.gap();
}

function hopCells(b: SheetBuilder, row: number, hop: HopStock | undefined): void {
  b.put("F", hop?.crop ?? "", { style: "input", format: "whole" }, row);
  b.put("G", hop?.alphaPercent ?? "", { style: "input", format: "one" }, row);
  b.put("H", hop?.measuredOn ?? "", { style: "input", format: "date" }, row);
  b.put("I", hop?.openedOn ?? "", { style: "input", format: "date" }, row);
  b.put("J", hop?.storedAt ?? "", { style: "input", format: "whole" }, row);
  b.put("K", hop?.package ?? "", { style: "inputText" }, row);
  // Days in the closed packet, and days since it was opened.
  b.put(
    "N",
    `=IF(N(H${row})=0,"",MAX(0,IF(N(I${row})>0,MIN(I${row},stores_today),stores_today)-H${row}))`,
    { style: "workings", format: "whole" },
    row,
  );
  b.put("O", `=IF(N(I${row})=0,0,MAX(0,stores_today-I${row}))`, { style: "workings", format: "whole" }, row);
}

/** One lifted call for the closed packets, one for the time since they were opened. */
function hopAges(b: SheetBuilder, first: number, last: number): void {
  const column = (letter: string) => `${letter}${first}:${letter}${last}`;
  const closed = `GYLE.HOPS.AGED(${column("G")},${column("N")},${column("J")},,${column("K")},stores_units)`;
  for (let row = first; row <= last; row += 1) {
    b.put(
      "L",
      row === first ? `=GYLE.HOPS.AGED(${closed},${column("O")},${column("J")},,"loose",stores_units)` : "",
      { style: "keyResult", format: "one", ...(row === first && { spillsTo: `L${last}` }) },
      row,
    );
  }
  b.validate({
    kind: "list",
    range: column("K"),
    choices: hopPackages,
    message: "loose: open or in a plain bag; sealed: airtight foil; barrier: vacuum or gas in barrier foil.",
  });
  b.put("N", "days shut", { style: "hint" }, first - 1);
  b.put("O", "days open", { style: "hint" }, first - 1);
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
    b.put(letter, text, { style: letter === "A" ? "heading" : "headingRight" });
  b.put("F", "For", { style: "heading", mergeTo: "L" });
  b.row += 1;
  const first = b.row;
  for (let row = first; row < first + listRows; row += 1) {
    b.put("A", "", { style: "resultText", format: "text" }, row);
    for (const letter of ["B", "C"]) b.put(letter, "", { style: "result", format: "two" }, row);
    b.put("D", "", { style: "keyResult", format: "two" }, row);
    b.put("E", "", { style: "result", format: "text" }, row);
    b.put("F", "", { style: "resultText", format: "text", mergeTo: "L" }, row);
  }
  b.name("stores_list", `A${first}:F${first + listRows - 1}`);
  b.row = first + listRows;
}
