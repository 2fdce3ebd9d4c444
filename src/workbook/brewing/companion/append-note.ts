import type { BatchSheet } from "../../batch/read/batch-sheets";
import { changeCells, type CellChange } from "./change-cells";
import { ChangeRefused } from "./outcome";

/** The notes with a line more; what stands there stays. */
export function notesWith(seen: BatchSheet, line: string): CellChange {
  const standing = seen.formula("notes");
  if (typeof standing === "string" && standing.startsWith("=")) throw new ChangeRefused("The cell of the notes holds a formula.");
  return { name: "notes", label: "the notes", content: standing === "" ? line : `${standing}\n${line}` };
}

/** The notes without a line that `notesWith` put there; nothing where they do not end with it any more. */
export function notesWithout(seen: BatchSheet, line: string): CellChange[] {
  const standing = String(seen.formula("notes"));
  if (standing !== line && !standing.endsWith(`\n${line}`)) return [];
  return [{ name: "notes", label: "the notes", content: standing.slice(0, -line.length).replace(/\n$/, "") }];
}

export async function appendNote(context: Excel.RequestContext, seen: BatchSheet, line: string): Promise<void> {
  await changeCells(context, seen, [notesWith(seen, line)]);
}
