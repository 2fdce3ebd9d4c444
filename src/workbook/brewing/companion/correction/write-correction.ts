import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { appendNote } from "../append-note";
import { momentShown } from "../../../grid/words/day-words";
import { gravityWords, shown } from "../words";
import type { Correction } from "./corrections";
import type { Missed, Wort } from "./plan-and-measured";

/** The line for the notes: what was missed, and what was done about it. */
export function correctionLine({ place, measured, planned, units }: Missed, { title, what, result }: Correction, now: number): string {
  const wort = ({ volume, gravity }: Wort) => `${shown(volume, "volume", units)} at ${gravityWords(gravity)}`;
  return `${momentShown(now)}, in the ${place}: ${wort(measured)} instead of ${wort(planned)}. ${title}: ${what} Should give ${wort(result)}.`;
}

export const writeCorrection = (
  context: Excel.RequestContext,
  seen: BatchSheet,
  missed: Missed,
  correction: Correction,
  now: number,
): Promise<void> => appendNote(context, seen, correctionLine(missed, correction, now));
