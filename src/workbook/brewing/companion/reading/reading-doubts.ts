import type { NamedCells } from "../../../grid/read/named-cells";
import { dayShown, momentShown } from "../../../grid/words/day-words";
import { gravityWords } from "../words";
import type { NewReading } from "./add-reading";

/** The steadiness test of the sheet lets two readings differ by this much (GYLE.LOG.STEADY). */
const tolerance = 0.001;

/** What looks wrong about a reading, before it is written. Each is asked about, none is decided for the brewer. */
export function readingDoubts(sheet: NamedCells, { when, gravity }: Pick<NewReading, "when" | "gravity">, now: number): string[] {
  const doubts: string[] = [];
  const brewedOn = sheet.number("brewed_on");
  if (when > now + 10 / 1440) doubts.push(`${momentShown(when)} is still to come.`);
  if (brewedOn !== "" && when < brewedOn) doubts.push(`${dayShown(when)} is before the brew day (${dayShown(brewedOn)}).`);
  const original = sheet.number("og");
  if (original !== "" && gravity > original + tolerance)
    doubts.push(`${gravityWords(gravity)} is above the original gravity of ${gravityWords(original)}: one of the two is wrong.`);
  const lowest = lowestBefore(sheet, when);
  if (lowest !== undefined && gravity > lowest + 2 * tolerance)
    doubts.push(`It read ${gravityWords(lowest)} before, and gravity cannot rise: mind scale and temperature, and sample again.`);
  return doubts;
}

function lowestBefore(sheet: NamedCells, when: number): number | undefined {
  const times = sheet.block("reading_times").map(([time]) => time);
  const earlier = sheet
    .block("gravities")
    .flatMap(([gravity], row) => (typeof gravity === "number" && Number(times[row]) < when ? [gravity] : []));
  return earlier.length === 0 ? undefined : Math.min(...earlier);
}
