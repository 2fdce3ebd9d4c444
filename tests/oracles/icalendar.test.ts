import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { findPythonWith } from "../../src/build/find-programs.mjs";
import { batchDates, type DatedBatch } from "../../src/workbook/brewing/calendar/batch-dates";
import { calendarFile } from "../../src/workbook/brewing/calendar/calendar-file";
import { dayNumber } from "../../src/workbook/grid/words/day-number";

/** The Python library icalendar: a reader of calendar files, written by others. */
const python = findPythonWith("icalendar");
if (python === undefined)
  console.warn(
    "Skipped: our calendar file read by the Python library icalendar, which is not here (Debian: apt install python3-icalendar).",
  );

const script = `
import json, sys
from icalendar import Calendar
calendar = Calendar.from_ical(sys.stdin.buffer.read())
print(json.dumps([{
  "errors": [str(error) for error in event.errors],
  "summary": str(event["SUMMARY"]),
  "starts": event.decoded("DTSTART").isoformat(),
  "ends": event.decoded("DTEND").isoformat(),
} for event in calendar.walk("VEVENT")]))
`;

interface Event {
  readonly errors: readonly string[];
  readonly summary: string;
  readonly starts: string;
  readonly ends: string;
}

const batch: DatedBatch = {
  id: "quillmarsh-2",
  name: "",
  units: "metric",
  brewedOn: dayNumber("2028-02-19"),
  startTime: 10 / 24,
  into: "bottles",
  packagedOn: undefined,
  conditioningTemperature: 21,
  verdict: "",
  lastReading: undefined,
  forecastEnd: undefined,
  starterBy: undefined,
  dryIn: undefined,
  dryOut: undefined,
  pressureVerdict: "",
};

/** What stands in a calendar when the file has been taken in. */
function inCalendar(given: Partial<DatedBatch>): Event[] {
  const dated = { ...batch, ...given };
  const file = calendarFile(dated, batchDates(dated), new Date(Date.UTC(2028, 1, 1, 12)));
  const { stdout, stderr, status } = spawnSync(python ?? "", ["-W", "ignore", "-c", script], { input: file, encoding: "utf8" });
  if (status !== 0) throw new Error(`icalendar ended with ${status}: ${stderr}`);
  return JSON.parse(stdout) as Event[];
}

describe.skipIf(python === undefined)("a calendar program reads our file", () => {
  it.each(["Footbridge", "בירת קציר", "Quillmarsh midsummer harvest ale, thirds", "a; b, c: “d”"])("with the name %s as it is", (name) => {
    const events = inCalendar({ name });
    expect(events.map(({ errors }) => errors).flat()).toEqual([]);
    expect(events.length).toBeGreaterThan(3);
    for (const { summary } of events) expect(summary.endsWith(name), summary).toBe(true);
  });

  it("and has the brew day by the clock on the wall, the others as whole days, over a 29 February", () => {
    const events = inCalendar({ name: "Leap" });
    expect(events[0]).toMatchObject({ starts: "2028-02-19T10:00:00" });
    // Ten days of fermentation from the 19th are the 29th, and the second reading is due on 1 March (common practice).
    expect(events.map(({ starts }) => starts)).toEqual(expect.arrayContaining(["2028-02-29", "2028-03-01"]));
    for (const { starts, ends } of events.slice(1)) expect(Date.parse(ends) - Date.parse(starts)).toBe(86_400_000);
  });

  it("and has a brew day of five hours on the nights of the clock changes, whatever this computer's zone", () => {
    // In Europe clocks change on 26 March and 29 October 2028; a floating time knows nothing of it.
    for (const day of ["2028-03-26", "2028-10-29"]) {
      const [brew] = inCalendar({ name: "Night", brewedOn: dayNumber(day), startTime: 1 / 24 });
      expect(brew).toMatchObject({ starts: `${day}T01:00:00`, ends: `${day}T06:00:00` });
    }
  });
});
