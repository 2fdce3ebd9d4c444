import type { BatchSheet } from "../../batch/read/batch-sheets";
import { changeCells, type CellChange } from "./change-cells";
import { ChangeRefused } from "./outcome";

/** The notes with a line more; what stands there stays. */
export function notesWith(seen: BatchSheet, line: string): CellChange {
  const standing = seen.formula("notes");
  if (typeof standing === "string" && standing.startsWith("=")) throw new ChangeRefused("The cell of the notes holds a formula.");
  return { name: "notes", label: "the notes", content: standing === "" ? line : `${standing}\n${line}` };
}

export async function appendNote(context: Excel.RequestContext, seen: BatchSheet, line: string): Promise<void> {
  await changeCells(context, seen, [notesWith(seen, line)]);
}
