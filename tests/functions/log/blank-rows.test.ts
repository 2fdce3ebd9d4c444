import { describe, expect, it } from "vitest";
import type { Matrix } from "../../../src/functions/describe";
import { functionNamed } from "../../../src/functions/registry";
import { answerOf } from "../../support/registry-probe";

const answer = (id: string, ...typed: unknown[]) => answerOf(functionNamed(id), typed);
const column = (...cells: unknown[]): Matrix => cells.map((cell) => [cell]);

/** From the curve with ends 1.050 and 1.010, B = 1.5 a day, M = 2.5 days. */
const gravities = column(1.0491, 1.0462, 1.0372, 1.0228, 1.0109, 1.01);
const days = column(0, 1, 2, 3, 5, 8);
const dates = column(46000, 46001, 46002, 46003, 46005, 46008);

describe("times at which LOG.CURVE is asked", () => {
  it("give a blank row where a date is not filled in yet, as each platform hands it over, and under a heading", () => {
    for (const blank of [0, null, ""]) {
      const rows = answer("LOG.CURVE", dates, gravities, column("When", 46002.5, blank));
      expect(rows).toHaveLength(3);
      expect([rows[0], rows[2]]).toEqual([
        ["", "", ""],
        ["", "", ""],
      ]);
      expect(rows[1]?.[0]).toBeCloseTo(1.03, 3);
    }
  });

  it("take a blank for day 0 where the times are days", () => {
    const [blank, pitching] = answer("LOG.CURVE", days, gravities, column("", 0));
    expect(blank).toEqual(pitching);
    // 1.010 + 0.040 / (1 + exp(−1.5 × 2.5)) = 1.04908
    expect(pitching?.[0]).toBeCloseTo(1.04908, 3);
  });
});

describe("a log in which no row has both time and reading", () => {
  const noDate = column("", 46002);
  const noReading = column(1.05, "");

  it("waits, and is no mistake", () => {
    expect(answer("LOG.STEADY", noDate, noReading)).toEqual([[""]]);
    expect(answer("LOG.FORECAST", noDate, noReading)).toEqual([[""]]);
    expect(answer("LOG.CURVE", noDate, noReading, column(46003))).toEqual([[""]]);
  });

  it("must still have columns of one length", () => {
    for (const id of ["LOG.STEADY", "LOG.FORECAST"])
      expect(answer(id, column(1, 2), column(1.05))).toEqual([["#VALUE! times and gravities must have the same number of cells"]]);
  });
});
