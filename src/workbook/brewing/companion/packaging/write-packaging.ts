import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { changeCells, type CellChange } from "../change-cells";
import { ChangeRefused } from "../outcome";
import { packagingChanges, type PackagingInput } from "./packaging-form";
import { packagingSafety } from "./packaging-safety";

/**
 * Writes the packaging cells that changed. What could burst a bottle is not written at all; another danger only when
 * `knowing` says that the brewer has confirmed it.
 */
export async function writePackaging(
  context: Excel.RequestContext,
  seen: BatchSheet,
  input: PackagingInput,
  knowing: boolean,
): Promise<void> {
  const changes = packagingChanges(seen, input);
  if (changes.length === 0) throw new ChangeRefused("The sheet says so already.");
  const wrong = changes.find(({ problem }) => problem !== undefined);
  if (wrong?.problem !== undefined) throw new ChangeRefused(wrong.problem);
  const { level, dangers } = packagingSafety(seen, input);
  if (!onlyCounts(seen, changes) && (level === "refuse" || (level === "confirm" && !knowing))) throw new ChangeRefused(dangers.join(" "));
  await changeCells(context, seen, changes);
}

/** Bottles that are filled already may be counted, whatever is in them. */
export const onlyCounts = (seen: BatchSheet, changes: readonly CellChange[]): boolean =>
  seen.number("packaged_on") !== "" && changes.every(({ name }) => name === "bottles_filled");
