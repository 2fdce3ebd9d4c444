import type { NamedCells } from "../../../grid/read/named-cells";
import { appendNote } from "../append-note";
import { momentShown } from "../../../grid/words/day-words";
import { gravityWords, shown } from "../words";
import type { Mend } from "./mends";
import type { Missed, Wort } from "./plan-and-measured";

/** The line for the notes: what was missed, and what was done about it. */
export function mendLine({ place, measured, planned, units }: Missed, { title, what, result }: Mend, now: number): string {
  const wort = ({ volume, gravity }: Wort) => `${shown(volume, "volume", units)} at ${gravityWords(gravity)}`;
  return `${momentShown(now)}, in the ${place}: ${wort(measured)} instead of ${wort(planned)}. ${title}: ${what} Should give ${wort(result)}.`;
}

export const writeMend = (context: Excel.RequestContext, seen: NamedCells, missed: Missed, mend: Mend, now: number): Promise<void> =>
  appendNote(context, seen, mendLine(missed, mend, now));
