import type { Along } from "../../grid/write/change-ranges";

/**
 * Notes that go below what the notes of their cells say already, to be written along with the cells. Notes came with
 * ExcelApi 1.18: where they are missing the change is made without them.
 */
export async function readyNotes(
  context: Excel.RequestContext,
  sheetName: string,
  wanted: readonly { readonly note: string | undefined; readonly at: string }[],
): Promise<Along | undefined> {
  const notes = wanted.filter(({ note }) => note !== undefined);
  if (notes.length === 0 || !Office.context.requirements.isSetSupported("ExcelApi", "1.18")) return undefined;
  const before = await contents(context, sheetName, notes);
  if (!before) return undefined;
  const write = () =>
    before.forEach(({ found, content }, index) => {
      const { note = "", at } = notes[index] ?? { at: "" };
      if (content === undefined) context.workbook.worksheets.getItem(sheetName).notes.add(at, note);
      else found.content = `${content}\n${note}`;
    });
  const takeBack = async () => {
    const now = (await contents(context, sheetName, notes)) ?? [];
    now.forEach(({ found, content }, index) => {
      const old = before[index]?.content;
      if (content === undefined || content === old) return;
      if (old === undefined) found.delete();
      else found.content = old;
    });
    await context.sync();
  };
  return { write, takeBack };
}

/** The note of each cell, its content undefined where there is none; undefined where the sheet is gone. */
async function contents(
  context: Excel.RequestContext,
  sheetName: string,
  places: readonly { readonly at: string }[],
): Promise<{ found: Excel.Note; content: string | undefined }[] | undefined> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName);
  await context.sync();
  if (sheet.isNullObject) return undefined;
  const found = places.map(({ at }) => sheet.notes.getItemOrNullObject(at));
  for (const note of found) note.load("content");
  await context.sync();
  return found.map((note) => ({ found: note, content: note.isNullObject ? undefined : note.content }));
}
