/**
 * A sheet carries this name while it is being written, or for as long as it stands only for a moment. Should Excel, the
 * pane or the connection die meanwhile, the name tells later that the sheet is nobody's.
 */
export const writingMark = "gylebook_writing";

/** A mark's own words: when the writing began, and a sign by which its pane knows it again. */
export const newMark = (): string =>
  `${new Date().toISOString()} ${Array.from(crypto.getRandomValues(new Uint8Array(6)), (byte) => (byte % 36).toString(36)).join("")}`;

/** Queues the mark. */
export const putMark = (sheet: Excel.Worksheet, mark: string): void => void sheet.names.add(writingMark, `="${mark}"`);

/** Queues its end, after everything else. */
export const takeMark = (sheet: Excel.Worksheet): void => sheet.names.getItem(writingMark).delete();

/** Asks for the mark of a sheet; after the next `context.sync()` the answer can be called: undefined where it has none. */
export function askMark(sheet: Excel.Worksheet): () => string | undefined {
  const item = sheet.names.getItemOrNullObject(writingMark).load("formula");
  return () => (item.isNullObject ? undefined : String(item.formula).replace(/^="?|"$/g, ""));
}
