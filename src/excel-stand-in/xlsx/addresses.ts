/** Cell addresses as text ("B3", "A1:C5") and as indexes from 0, both ends included. */
export interface Block {
  startRow: number;
  startColumn: number;
  endRow: number;
  endColumn: number;
}

export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

export function columnIndex(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

export const cellAddress = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

export function blockAddress(block: Block): string {
  const start = cellAddress(block.startRow, block.startColumn);
  const end = cellAddress(block.endRow, block.endColumn);
  return start === end ? start : `${start}:${end}`;
}

/** `$A$1:$C$5`, or `$A$1` for one cell. */
export function absoluteAddress(block: Block): string {
  return blockAddress(block).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
}

const PART = /^\$?([A-Za-z]{1,3})?\$?(\d{1,7})?$/;

/** Reads "A1", "$A$1:C5", "A:C" and "1:3"; undefined if it is none of them. */
export function parseBlock(text: string): Block | undefined {
  const [first, second, ...more] = text.trim().split(":");
  const start = PART.exec(first ?? "");
  const end = second === undefined ? start : PART.exec(second);
  if (more.length > 0 || !start?.[0] || !end?.[0]) return undefined;
  if (second === undefined && !(start[1] && start[2])) return undefined;
  return {
    startRow: start[2] ? Number(start[2]) - 1 : 0,
    startColumn: start[1] ? columnIndex(start[1]) : 0,
    endRow: end[2] ? Number(end[2]) - 1 : LAST_ROW,
    endColumn: end[1] ? columnIndex(end[1]) : LAST_COLUMN,
  };
}

/** Reads a list of blocks separated by spaces, as `sqref` attributes hold them. */
export function parseBlocks(text: string): Block[] {
  return text
    .trim()
    .split(/\s+/)
    .map(parseBlock)
    .filter((block) => block !== undefined);
}

export const blockAddresses = (blocks: Block[]): string => blocks.map(blockAddress).join(" ");

/** Whether a sheet's name has to stand in quotes in a formula; quoting more than needed does no harm. */
export function sheetPrefix(name: string): string {
  return /^[A-Za-z_]\w*$/.test(name) && !/^([A-Za-z]{1,3}\d+|[RrCc]\d*([RrCc]\d*)?)$/.test(name)
    ? `${name}!`
    : `'${name.replaceAll("'", "''")}'!`;
}

/** Splits `'My Sheet'!$A$1:$B$2` into the sheet's name and the rest. */
export function splitSheet(reference: string): { sheet: string | undefined; rest: string } {
  const bang = reference.lastIndexOf("!");
  if (bang < 0) return { sheet: undefined, rest: reference };
  const sheet = reference.slice(0, bang);
  return { sheet: sheet.startsWith("'") ? sheet.slice(1, -1).replaceAll("''", "'") : sheet, rest: reference.slice(bang + 1) };
}
