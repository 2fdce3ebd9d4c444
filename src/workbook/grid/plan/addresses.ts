/** A1-style addresses: the little of them that plans and the writer need. Rows and columns count from 1 here. */
export interface Position {
  readonly row: number;
  readonly column: number;
}

export interface Block {
  readonly from: Position;
  readonly to: Position;
}

export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}

export function columnLetters(number: number): string {
  let letters = "";
  for (let rest = number; rest > 0; rest = Math.floor((rest - 1) / 26)) letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
}

export function position(address: string): Position {
  const match = /^\$?([A-Z]{1,3})\$?(\d+)$/i.exec(address);
  if (!match?.[1] || !match[2]) throw new Error(`"${address}" is not the address of a cell`);
  return { column: columnNumber(match[1]), row: Number(match[2]) };
}

/** "B7" or "B7:E12" as a block; a single cell is a block of one. */
export function block(range: string): Block {
  const [first = "", last = first] = range.split(":");
  return { from: position(first), to: position(last) };
}

/** Whether a cell stands in a block. */
export const isWithin = ({ from, to }: Block, { row, column }: Position): boolean =>
  row >= from.row && row <= to.row && column >= from.column && column <= to.column;

/** "'Batch 1'!$B$7:$C$9" → "B7:C9": what an address says within its sheet. */
export const localAddress = (text: string): string => text.slice(text.lastIndexOf("!") + 1).replaceAll("$", "");

export function address(row: number, column: number): string {
  return `${columnLetters(column)}${row}`;
}
