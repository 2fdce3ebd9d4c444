import { describe, expect, it } from "vitest";
import { courseOf } from "../../../src/workbook/brewing/fermentation/fermentation-curve";
import { notTellingYet } from "../../../src/workbook/brewing/fermentation/under-way";

describe("a log that cannot tell yet", () => {
  const beer = { verdict: "working", gravity: 1.02, originalGravity: 1.05, lastReading: 46010, countFrom: undefined };

  it("is not called falling: at the original gravity, or before readings count again", () => {
    expect(notTellingYet(beer)).toBeUndefined();
    expect(notTellingYet({ ...beer, gravity: 1.049 })).toMatch(/^Not falling yet/);
    expect(notTellingYet({ ...beer, gravity: 1.0485 })).toBeUndefined();
    expect(notTellingYet({ ...beer, countFrom: 46009.5 })).toMatch(/^Waiting/);
    expect(notTellingYet({ ...beer, countFrom: 46009 })).toMatch(/^After the dry hops/);
    expect(notTellingYet({ ...beer, verdict: "steady", countFrom: 46009 })).toBeUndefined();
  });
});

describe("after dry hops", () => {
  it("no end is forecast from readings that no longer count", () => {
    const log = {
      sheetName: "",
      batchName: "",
      units: "metric",
      start: 46000,
      temperatures: [],
      originalGravity: 1.05,
      expectedGravity: 1.01,
      verdict: "working",
      verdictRests: "",
      countFrom: undefined,
      nextStep: "",
      nextReading: undefined,
      gravities: [
        [46000, 1.05],
        [46002, 1.04],
        [46003, 1.03],
      ].map(([day = 0, value = 0]) => ({ day, value })),
    } as const;
    expect(courseOf(log).forecast?.day).toBeGreaterThan(46003);
    expect(courseOf({ ...log, countFrom: 46003.5 }).forecast).toBeUndefined();
    expect(courseOf({ ...log, countFrom: 46003.5 }).curve.length).toBeGreaterThan(0);
  });
});
