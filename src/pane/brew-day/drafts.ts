/** What was typed for a cell and not written yet, batch by batch. It outlives the line, a look at another screen, and a write that fails. */
const drafts = new Map<string, Readonly<Record<string, string>>>();

export const draftOf = (batch: string): Readonly<Record<string, string>> => drafts.get(batch) ?? {};

export function keepDraft(batch: string, cell: string, text: string): Readonly<Record<string, string>> {
  const next = { ...draftOf(batch), [cell]: text };
  drafts.set(batch, next);
  return next;
}

/** What is on the sheet now is no draft any more. */
export function dropDraft(batch: string, cells: readonly string[]): void {
  drafts.set(batch, Object.fromEntries(Object.entries(draftOf(batch)).filter(([cell]) => !cells.includes(cell))));
}
