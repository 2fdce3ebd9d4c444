/** Notes that go below what the notes of their cells say already. */
export interface ReadyNotes {
  /** Queues them. */
  readonly write: () => void;
  /** After a failure: takes away what was written of them. */
  readonly takeBack: (context: Excel.RequestContext, sheet: Excel.Worksheet) => Promise<void>;
}

const none: ReadyNotes = { write: () => undefined, takeBack: () => Promise.resolve() };

/** Looks at the notes of the cells. Notes came with ExcelApi 1.18: where they are missing the change is made without them. */
export async function readyNotes(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  wanted: readonly { readonly note: string | undefined; readonly at: string }[],
): Promise<ReadyNotes> {
  const notes = wanted.filter(({ note }) => note !== undefined);
  if (notes.length === 0 || !Office.context.requirements.isSetSupported("ExcelApi", "1.18")) return none;
  const before = await contents(context, sheet, notes);
  const write = () =>
    before.forEach(({ found, content }, index) => {
      const { note = "", at } = notes[index] ?? { at: "" };
      if (content === undefined) sheet.notes.add(at, note);
      else found.content = `${content}\n${note}`;
    });
  const takeBack = async (again: Excel.RequestContext, sameSheet: Excel.Worksheet) => {
    const now = await contents(again, sameSheet, notes);
    now.forEach(({ found, content }, index) => {
      const old = before[index]?.content;
      if (content === undefined || content === old) return;
      if (old === undefined) found.delete();
      else found.content = old;
    });
    await again.sync();
  };
  return { write, takeBack };
}

/** The note of each cell; its content is undefined where there is none. */
async function contents(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  places: readonly { readonly at: string }[],
): Promise<{ found: Excel.Note; content: string | undefined }[]> {
  const found = places.map(({ at }) => sheet.notes.getItemOrNullObject(at));
  for (const note of found) note.load("content");
  await context.sync();
  return found.map((note) => ({ found: note, content: note.isNullObject ? undefined : note.content }));
}
