import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { backwardPlan, batchDates, usualFermentationDays, type DatedBatch } from "../../src/workbook/brewing/calendar/batch-dates";
import { calendarFile, calendarFileName } from "../../src/workbook/brewing/calendar/calendar-file";
import { dayNumber } from "../../src/workbook/grid/words/day-number";

const batch: DatedBatch = {
  id: "quillmarsh-1",
  name: "Footbridge",
  units: "metric",
  brewedOn: dayNumber("2026-09-05"),
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
const days = (given: Partial<DatedBatch>) => Object.fromEntries(batchDates({ ...batch, ...given }).map(({ kind, day }) => [kind, day]));

describe("dates of a batch", () => {
  it("before any reading follow common practice: ten days of fermentation, two readings, ten days in the bottle", () => {
    expect(days({})).toEqual({
      brew: dayNumber("2026-09-05") + 10 / 24,
      look: dayNumber("2026-09-08"),
      "first-reading": dayNumber("2026-09-15"),
      "second-reading": dayNumber("2026-09-16"),
      packaging: dayNumber("2026-09-17"),
      // Ten days at 21 °C (common practice, as in GYLE.PACK.READY).
      "first-taste": dayNumber("2026-09-27"),
    });
  });
  it("follow the forecast once there is one, and the readings once they are steady", () => {
    expect(days({ verdict: "working", lastReading: dayNumber("2026-09-08"), forecastEnd: dayNumber("2026-09-12") + 0.3 })).toMatchObject({
      "first-reading": dayNumber("2026-09-13"),
      packaging: dayNumber("2026-09-15"),
    });
    const steady = days({ verdict: "steady", lastReading: dayNumber("2026-09-16T18:50") });
    expect(steady).toMatchObject({ packaging: dayNumber("2026-09-18") });
    expect(steady).not.toHaveProperty("first-reading");
  });
  it("never lead a stalled beer into bottles", () => {
    expect(Object.keys(days({ verdict: "stalled", lastReading: dayNumber("2026-09-14") }))).toEqual(["brew", "first-reading"]);
  });
  it("never name the day of packaging without a word where the sheet says that it will not hold", () => {
    const words = (pressureVerdict: string) => batchDates({ ...batch, pressureVerdict }).find(({ kind }) => kind === "packaging")?.words;
    expect(words("over: 4 volumes at 25 °C make …")).toContain("it will not hold");
    for (const verdict of ["", "within: 2.4 volumes", "close: 2.8 volumes"]) expect(words(verdict)).not.toContain("it will not hold");
  });
  it("name no first taste where the sheet says that it will not hold", () => {
    expect(days({ pressureVerdict: "over: 4 volumes at 25 °C make …" })).not.toHaveProperty("first-taste");
    expect(days({ pressureVerdict: "close: 2.8 volumes" })).toHaveProperty("first-taste");
  });
  it("go by the day of packaging that stands on the sheet; a keg has no first bottle", () => {
    expect(days({ packagedOn: dayNumber("2026-09-19") })).toMatchObject({
      packaging: dayNumber("2026-09-19"),
      "first-taste": dayNumber("2026-09-29"),
    });
    expect(days({ into: "keg" })).not.toHaveProperty("first-taste");
  });
  it("show the starter and the dry hops, and no packaging before two readings after their stay", () => {
    const [made, into, out] = ["2026-09-03", "2026-09-13", "2026-09-17"].map(dayNumber);
    expect(days({ starterBy: made, dryIn: into, dryOut: out })).toMatchObject({
      starter: made,
      "dry-hops": into,
      "dry-hops-out": out,
      "first-reading": dayNumber("2026-09-18"),
      "second-reading": dayNumber("2026-09-19"),
      packaging: dayNumber("2026-09-20"),
    });
    // Out long before the beer has ended: they hold nothing back.
    expect(days({ dryIn: dayNumber("2026-09-09"), dryOut: dayNumber("2026-09-11") })).toMatchObject({ packaging: dayNumber("2026-09-17") });
    expect(days({})).not.toHaveProperty("dry-hops");
  });
  it("are none without a brew day", () => expect(batchDates({ ...batch, brewedOn: undefined })).toEqual([]));
});

describe("from a day wanted backwards", () => {
  it("counts ten days in the bottle, two to bottling, ten in the fermenter", () => {
    expect(backwardPlan(dayNumber("2026-12-24"), usualFermentationDays, 21, "metric")).toEqual({
      packageBy: dayNumber("2026-12-14"),
      brewBy: dayNumber("2026-12-02"),
      conditioningDays: 10,
    });
  });
  it("is the way forward in reverse", () => {
    fc.assert(
      fc.property(fc.integer({ min: 40000, max: 50000 }), fc.integer({ min: 15, max: 25 }), (tasteOn, temperature) => {
        const plan = backwardPlan(tasteOn, usualFermentationDays, temperature, "metric");
        const forward = batchDates({ ...batch, brewedOn: plan?.brewBy, conditioningTemperature: temperature });
        expect(forward.find(({ kind }) => kind === "first-taste")?.day).toBe(tasteOn);
      }),
    );
  });
  it("does not answer for a place too cold or hot for bottles to carbonate", () =>
    expect(backwardPlan(46000, 10, 90, "metric")).toBeUndefined());
});

/** A small strict reader after RFC 5545: CRLF, lines of at most 75 octets, unfolded, components in balance. */
function parse(text: string): { name: string; parameters: string; value: string; component: string }[] {
  expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  const physical = text.split("\r\n");
  for (const line of physical) expect(new TextEncoder().encode(line).length, line).toBeLessThanOrEqual(75);
  const lines = text
    .replaceAll(/\r\n[ \t]/g, "")
    .split("\r\n")
    .filter((line) => line !== "");
  const open: string[] = [];
  const found = lines.flatMap((line) => {
    const match = /^([A-Z-]+)((?:;[A-Z-]+=[^:;]*)*):(.*)$/s.exec(line);
    if (!match) throw new Error(`no content line: ${line}`);
    const [, name = "", parameters = "", value = ""] = match;
    if (name === "BEGIN") open.push(value);
    else if (name === "END") expect(open.pop()).toBe(value);
    else return [{ name, parameters, value, component: open.at(-1) ?? "" }];
    return [];
  });
  expect(open).toEqual([]);
  return found;
}

const unescaped = (value: string): string =>
  value.replaceAll(/\\([\\;,nN])/g, (_, mark: string) => (mark.toLowerCase() === "n" ? "\n" : mark));
const now = new Date(Date.UTC(2026, 8, 1, 12, 30));

describe("the calendar file", () => {
  const dates = batchDates(batch);
  const lines = parse(calendarFile(batch, dates, now));
  const of = (name: string) => lines.filter((line) => line.component === "VEVENT" && line.name === name);

  it("has what RFC 5545 asks of a calendar and of each event", () => {
    for (const name of ["VERSION", "PRODID"])
      expect(lines.filter((line) => line.component === "VCALENDAR" && line.name === name)).toHaveLength(1);
    // Ours, and not the library's own.
    expect(lines.find((line) => line.name === "PRODID")?.value).toBe("-//Gylebook//batch dates//EN");
    expect(lines.filter(({ value }) => /sebbo|ical-generator/i.test(value))).toEqual([]);
    for (const name of ["UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY", "SEQUENCE"]) expect(of(name), name).toHaveLength(dates.length);
    for (const { value } of of("DTSTAMP")) expect(value).toBe("20260901T123000Z");
  });
  it("says the clock on the wall, without a zone, and whole days as days that end on the next", () => {
    expect(of("DTSTART")[0]).toMatchObject({ parameters: "", value: "20260905T100000" });
    expect(of("DTEND")[0]?.value).toBe("20260905T150000");
    expect([of("DTSTART")[1], of("DTEND")[1]].map((line) => `${line?.parameters}:${line?.value}`)).toEqual([
      ";VALUE=DATE:20260908",
      ";VALUE=DATE:20260909",
    ]);
  });
  it("keeps the mark of an event from file to file and counts up, so that a calendar moves it", () => {
    const later = parse(
      calendarFile(
        batch,
        batchDates({ ...batch, forecastEnd: dayNumber("2026-09-20"), verdict: "working" }),
        new Date(now.getTime() + 60_000),
      ),
    );
    const ids = (from: typeof lines) => from.filter(({ name }) => name === "UID").map(({ value }) => value);
    expect(ids(later)).toEqual(ids(lines));
    expect(new Set(ids(lines)).size).toBe(dates.length);
    const sequence = (from: typeof lines) => Number(from.find(({ name }) => name === "SEQUENCE")?.value);
    expect(sequence(later)).toBeGreaterThan(sequence(lines));
  });
  it("carries any name through, and none can add a line of its own", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: "grapheme", maxLength: 120 }), fc.constant("x\nBEGIN:VALARM\r\nEND;,\\n")), (name) => {
        const read = parse(calendarFile({ ...batch, name }, dates, now));
        const summary = read.find((line) => line.name === "SUMMARY");
        expect(unescaped(summary?.value ?? "").replaceAll(/\r?\n/g, "\n")).toBe(`Brew day: ${name}`.replaceAll(/\r?\n/g, "\n"));
        expect(read.filter(({ component }) => component !== "VEVENT" && component !== "VCALENDAR")).toEqual([]);
      }),
    );
  });
  it("has a name that a disk takes", () => expect(calendarFileName({ name: "a/b: c?" }, dates)).toBe("ab c 2026-09-05.ics"));
});
