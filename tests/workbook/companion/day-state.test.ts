import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { DayLine, LineKind } from "../../../src/workbook/brewing/companion/brew-day/day-lines";
import { beginsNow, dayState, doubtfullyEarly, type DayState } from "../../../src/workbook/brewing/companion/brew-day/day-state";
import { dayNumberAt, instantOf, nextInstantAt, timeOfDayAt } from "../../../src/workbook/brewing/companion/wall-clock";
import { dayNumber } from "../../../src/workbook/grid/words/day-number";

const zone = process.env["TZ"];
beforeAll(() => {
  process.env["TZ"] = "Europe/Berlin";
});
afterAll(() => {
  if (zone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = zone;
});

const minute = 60_000;
const at = (iso: string): number => instantOf(dayNumber(iso));
const clock = (instant: number): string => new Date(instant).toTimeString().slice(0, 5);

/** A small day: steep for 30 min, boil for 60 with two hops and a chiller, chill for 20. Minutes from the start. */
const plan: readonly [string, number, LineKind, number | undefined][] = [
  ["Steep", 0, "step", undefined],
  ["Lift the bag", 30, "step", undefined],
  ["Boil begins", 40, "boil begins", 0],
  ["Add Perle", 40, "hop", 0],
  ["Chiller in", 82, "step", 42],
  ["Add Cascade", 85, "hop", 45],
  ["Flame out", 100, "flame out", 60],
  ["Chill", 100, "step", undefined],
  ["Pitch", 120, "step", undefined],
  ["Done", 125, "done", undefined],
];

function day(start: string, happened: readonly (string | number)[] = []): DayLine[] {
  return plan.map(([what, minutes, kind, boilMinute], row) => {
    const cell = happened[row] ?? "";
    const time = typeof cell === "string" && /^\d\d:\d\d$/.test(cell) ? dayNumber(`2026-01-01T${cell}`) % 1 : cell;
    return {
      row,
      kind,
      what,
      amount: "",
      caution: `mind ${what}`,
      why: "",
      planned: dayNumber(start) + minutes / 1440,
      boilMinute,
      happened: time,
    };
  });
}

function stateAt(lines: readonly DayLine[], now: number): DayState {
  const state = dayState(lines, now);
  if (!state) throw new Error("no day");
  return state;
}

describe("the clock", () => {
  it("goes from instants to day numbers and back, on ordinary days and in summer time", () => {
    for (const iso of ["2026-09-05T14:40", "2026-01-31T00:00", "2026-03-29T03:30", "2026-12-31T23:59"])
      expect(dayNumberAt(at(iso))).toBeCloseTo(dayNumber(iso), 8);
    expect(timeOfDayAt(at("2026-09-05T18:00"))).toBe(0.75);
  });

  it("finds the day of a time of day", () => {
    expect(nextInstantAt(0.5, at("2026-09-05T10:00"))).toBe(at("2026-09-05T12:00"));
    expect(nextInstantAt(0.25, at("2026-09-05T10:00"))).toBe(at("2026-09-06T06:00"));
  });
});

describe("a brew day", () => {
  it("shows what is due, the next two and the time to it", () => {
    const state = stateAt(day("2026-09-05T10:00"), at("2026-09-05T09:50"));
    expect(state.phase).toBe("going");
    expect(state.current?.what).toBe("Steep");
    expect(state.current?.dueAt).toBe(at("2026-09-05T10:00"));
    expect(state.coming.map(({ what }) => what)).toEqual(["Lift the bag", "Boil begins"]);
    expect(state.running).toBeUndefined();
  });

  it("runs the step that was begun, and moves the rest along when it was begun late", () => {
    const state = stateAt(day("2026-09-05T10:00", ["10:12"]), at("2026-09-05T10:20"));
    expect([state.running?.what, clock(state.running?.endsAt ?? 0)]).toEqual(["Steep", "10:42"]);
    expect(clock(state.current?.dueAt ?? 0)).toBe("10:42");
    expect(state.lateMinutes).toBe(12);
    expect(clock(state.endsAt)).toBe("12:17");
    expect(state.lines.map(({ planned }) => planned)).toEqual(day("2026-09-05T10:00").map(({ planned }) => planned));
  });

  it("moves the rest with every minute that the due step waits, and back when it is caught up", () => {
    const lines = day("2026-09-05T10:00", ["10:00"]);
    expect(stateAt(lines, at("2026-09-05T10:30")).lateMinutes).toBe(0);
    expect(stateAt(lines, at("2026-09-05T10:47")).lateMinutes).toBe(17);
    expect(stateAt(day("2026-09-05T10:00", ["10:00", "10:25"]), at("2026-09-05T10:26")).lateMinutes).toBe(-5);
  });

  it("begins when the brewer begins, however long after the plan, and is late only once it has begun", () => {
    const waiting = stateAt(day("2026-09-05T10:00"), at("2026-09-05T14:59"));
    expect(beginsNow(waiting, at("2026-09-05T14:59"))).toBe(true);
    expect(clock(waiting.endsAt)).toBe("17:04");
    expect(beginsNow(stateAt(day("2026-09-05T10:00"), at("2026-09-05T09:50")), at("2026-09-05T09:50"))).toBe(false);
    expect(beginsNow(stateAt(day("2026-09-05T10:00", ["14:59"]), at("2026-09-05T16:00")), at("2026-09-05T16:00"))).toBe(false);
  });

  it("asks about a line that is marked five minutes or more before its time, in a step as in the boil, but not before the day has begun", () => {
    const early = (happened: readonly string[], row: number, time: string): number => {
      const state = stateAt(day("2026-09-05T10:00", happened), at(`2026-09-05T${time}`));
      return doubtfullyEarly(state, state.lines[row]!, at(`2026-09-05T${time}`));
    };
    expect(early([], 0, "09:15")).toBe(0);
    expect(early(["10:00"], 1, "10:02")).toBe(28);
    // A steep of half an hour that is ended after a quarter of one, and one that is ended four minutes early.
    expect(early(["10:00"], 1, "10:15")).toBe(15);
    expect(early(["10:00"], 1, "10:26")).toBe(0);
    // The boil has run since 10:40: Cascade is due at 11:25.
    const boiling = ["10:00", "10:30", "10:40", "10:40", "10:40"];
    expect(early(boiling, 5, "10:40")).toBe(45);
    expect(early(boiling, 5, "11:20")).toBe(5);
    expect(early(boiling, 5, "11:21")).toBe(0);
  });

  it("runs the boil with what was done in it, and a late hop moves nothing", () => {
    const lines = day("2026-09-05T10:00", ["10:00", "10:30", "10:45", "10:46", "11:27"]);
    const state = stateAt(lines, at("2026-09-05T11:40"));
    expect([state.running?.what, clock(state.running?.endsAt ?? 0)]).toEqual(["Boil begins", "11:45"]);
    expect(state.running?.doneInIt.map(({ what, at: done }) => [what, clock(done)])).toEqual([
      ["Add Perle", "10:46"],
      ["Chiller in", "11:27"],
    ]);
    expect(state.current?.what).toBe("Add Cascade");
    expect(clock(state.current?.dueAt ?? 0)).toBe("11:30");
    expect(state.lines.filter(({ kind }) => kind === "flame out").map(({ dueAt }) => clock(dueAt))).toEqual(["11:45"]);
    const added = stateAt(day("2026-09-05T10:00", ["10:00", "10:30", "10:45", "10:46", "11:27", "11:41"]), at("2026-09-05T11:42"));
    expect(clock(added.current?.dueAt ?? 0)).toBe("11:45");
  });

  it("lists all that still goes into a running boil", () => {
    const state = stateAt(day("2026-09-05T10:00", ["10:00", "10:30", "10:40"]), at("2026-09-05T10:41"));
    expect(state.coming.map(({ what }) => what)).toEqual(["Chiller in", "Add Cascade", "Flame out"]);
  });

  it("does not lose a line that was passed over", () => {
    const state = stateAt(day("2026-09-05T10:00", ["10:00", "10:30", "10:40", "10:40", "", "11:25"]), at("2026-09-05T11:26"));
    expect(state.missed.map(({ what }) => what)).toEqual(["Chiller in"]);
    expect(state.current?.what).toBe("Flame out");
  });

  it("goes over midnight", () => {
    const lines = day("2026-09-05T22:30", ["22:30", "23:00", "23:15", "23:15", "23:58", "00:01", "00:15"]);
    const state = stateAt(lines, at("2026-09-06T00:20"));
    expect(state.phase).toBe("going");
    expect(state.lines[5]?.doneAt).toBe(at("2026-09-06T00:01"));
    expect(state.current?.dueAt).toBe(at("2026-09-06T00:15"));
    expect(state.lateMinutes).toBe(10);
    const chilling = stateAt(
      day("2026-09-05T22:30", ["22:30", "23:00", "23:15", "23:15", "23:58", "00:01", "00:15", "00:16"]),
      at("2026-09-06T00:20"),
    );
    expect([chilling.running?.what, chilling.running?.endsAt]).toEqual(["Chill", at("2026-09-06T00:36")]);
  });

  it("boils for an hour on the night when the clocks are put back", () => {
    // 25 October 2026 in Berlin: after 02:59 in summer time comes 02:00 in winter time.
    const begun = at("2026-10-25T01:55");
    const lines = day("2026-10-25T01:15", ["01:15", "01:45", "01:55"]);
    const state = stateAt(lines, begun + 10 * minute);
    expect(((state.running?.endsAt ?? 0) - begun) / minute).toBe(60);
  });

  it("is the same after a sleep or a reload, since only the sheet and the clock count", () => {
    const lines = day("2026-09-05T10:00", ["10:00", "10:30", "10:40"]);
    const before = stateAt(lines, at("2026-09-05T10:45"));
    const after = stateAt(structuredClone(lines), at("2026-09-05T11:05"));
    expect(before.running?.what).toBe("Boil begins");
    expect(after.running).toEqual(before.running);
    expect(after.current?.what).toBe(before.current?.what);
  });

  it("says when the computer's clock was put back behind the last time in the sheet", () => {
    const lines = day("2026-09-05T10:00", ["10:00", "10:30"]);
    expect(stateAt(lines, at("2026-09-05T10:31")).clockBehindMinutes).toBe(0);
    expect(stateAt(lines, at("2026-09-05T09:30")).clockBehindMinutes).toBe(60);
  });

  it("takes words in a cell for done, and a whole date as it is", () => {
    const state = stateAt(day("2026-09-05T10:00", ["about ten", dayNumber("2026-09-05T10:35")]), at("2026-09-05T10:36"));
    expect(state.lines[0]?.isDone).toBe(true);
    expect(state.lines[0]?.doneAt).toBeUndefined();
    expect(state.lines[1]?.doneAt).toBe(at("2026-09-05T10:35"));
    expect(state.current?.what).toBe("Boil begins");
  });

  it("knows another day, a day that is over and one that is finished", () => {
    expect(stateAt(day("2026-09-05T10:00"), at("2026-09-07T10:00")).phase).toBe("another day");
    expect(stateAt(day("2026-09-05T10:00"), at("2026-09-03T10:00")).phase).toBe("another day");
    expect(stateAt(day("2026-09-05T10:00", ["10:00"]), at("2026-09-06T10:00")).phase).toBe("over");
    const all = stateAt(
      day("2026-09-05T10:00", ["10:00", "10:30", "10:40", "10:40", "11:22", "11:25", "11:40", "11:40", "12:00", "12:05"]),
      at("2026-09-09T10:00"),
    );
    expect(all.phase).toBe("finished");
    expect(all.running).toBeUndefined();
    expect(dayState([], 0)).toBeUndefined();
  });
});
