import ical from "ical-generator";
import { isoDay, millisecondsPerDay, onTheWall } from "../../grid/words/day-number";
import type { BatchDate, DatedBatch } from "./batch-dates";

/** From the first fire to the cleaned kettle (common practice). */
const brewDayHours = 5;

/**
 * The dates of batches as an iCalendar file (RFC 5545). Times are floating: the clock on the wall wherever it is read. An
 * event keeps its UID as long as the batch keeps its mark, so that a calendar that takes the file in again moves it.
 *
 * @param now moment of writing, for DTSTAMP
 */
export function calendarFile(batch: Pick<DatedBatch, "id" | "name">, dates: readonly BatchDate[], now: Date): string {
  // No name for the calendar as a whole: the library would write it without escaping.
  const calendar = ical({ prodId: { company: "Gylebook", product: "batch dates", language: "EN" } });
  for (const { kind, title, day, words, basis } of dates) {
    const timed = kind === "brew" && day % 1 > 0;
    const start = onTheWall(timed ? day : Math.floor(day));
    calendar.createEvent({
      id: `${encodeURIComponent(batch.id)}-${kind}@gylebook`,
      stamp: now,
      lastModified: now,
      // Grows with every file that is written: a later one outdoes an earlier one.
      sequence: Math.floor((now.getTime() - Date.UTC(2026, 0, 1)) / 60_000),
      start,
      end: timed ? onTheWall(day + brewDayHours / 24) : new Date(start.getTime() + millisecondsPerDay),
      allDay: !timed,
      floating: true,
      summary: `${title}: ${batch.name}`,
      description: `${words}\n(${basis})`,
    });
  }
  return calendar.toString();
}

export const calendarFileName = (batch: Pick<DatedBatch, "name">, dates: readonly BatchDate[]): string =>
  `${batch.name.replace(/[^\p{L}\p{N} _-]/gu, "").trim() || "batch"} ${isoDay(dates[0]?.day ?? 0)}.ics`;
