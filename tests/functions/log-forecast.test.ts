import { describe, expect, it } from "vitest";
import { functionNamed } from "../../src/functions/registry";
import { answerOf } from "../support/registry-probe";

const forecast = (rows: readonly (readonly [number, number])[], original: number | null = null, expected: number | null = null) =>
  answerOf(functionNamed("LOG.FORECAST"), [rows.map(([day]) => [day]), rows.map(([, gravity]) => [gravity]), original, expected]);

describe("LOG.FORECAST", () => {
  it("says in words why it cannot tell yet, as #N/A", () => {
    expect(
      forecast([
        [0, 1.05],
        [1, 1.049],
        [2, 1.048],
      ]),
    ).toEqual([["#N/A too early to tell: gravity has fallen by 0.002, and a curve needs 0.005 or more"]]);
    expect(
      forecast([
        [0, 1.05],
        [1, 1.045],
        [2, 1.035],
      ]),
    ).toEqual([["#N/A too early to tell: the readings do not show yet where the curve will end; give the expected gravity, or wait"]]);
    expect(
      forecast(
        [
          [0, 1.05],
          [1, 1.045],
          [2, 1.043],
        ],
        1.05,
        1.01,
      ),
    ).toEqual([["#N/A too early to tell: about a third of the way down is needed"]]);
  });

  it("says which row to look at when gravity rises, as #VALUE!", () => {
    expect(
      String(
        forecast([
          [0, 1.05],
          [3, 1.02],
          [4, 1.03],
        ])[0]?.[0],
      ),
    ).toMatch(/^#VALUE! the newest reading stands above an earlier one/);
    // Also where it has fallen by too little for a curve.
    expect(
      String(
        forecast([
          [0, 1.03],
          [3, 1.02],
          [4, 1.029],
        ])[0]?.[0],
      ),
    ).toMatch(/^#VALUE! the newest reading stands above an earlier one/);
  });

  it("has no forecast for wort that has not begun, and no ± of days for beer that has ended", () => {
    expect(
      forecast([
        [0, 1.05],
        [1, 1.05],
        [3, 1.05],
      ])[0],
    ).toEqual(["state", "not begun", ""]);
    const ended = forecast(
      [
        [0, 1.05],
        [2, 1.03],
        [4, 1.014],
        [6, 1.012],
        [7, 1.012],
      ],
      1.05,
      1.012,
    );
    expect(ended.slice(0, 4)).toEqual([
      ["state", "steady", "2 readings over 1.0 days"],
      ["final gravity", 1.012, 0.001],
      ["day it gets there", "", ""],
      ["per cent done", 100, ""],
    ]);
  });

  it("starts over where readings count from a day", () => {
    const rows = [
      [0, 1.05],
      [2, 1.03],
      [4, 1.014],
      [6, 1.012],
      [7, 1.012],
      [8, 1.0105],
    ] as const;
    const answer = answerOf(functionNamed("LOG.FORECAST"), [
      rows.map(([day]) => [day]),
      rows.map(([, gravity]) => [gravity]),
      1.05,
      1.011,
      7.5,
    ]);
    expect(answer[0]).toEqual(["state", "working", ""]);
    // It is at its end, as far as the curve knows: no day.
    expect(answer[2]).toEqual(["day it gets there", "", ""]);
  });

  it("names no day that is not clearly to come, and never one to ± 0.0 days", () => {
    const rows = [
      [0, 1.05],
      [1, 1.044],
      [2, 1.03],
      [3, 1.02],
      [4, 1.015],
      [5, 1.0135],
      [6, 1.0125],
      [7, 1.012],
      [8, 1.0115],
      [9, 1.011],
    ] as const;
    const days = rows.slice(3).map((_, index) => forecast(rows.slice(0, index + 4), 1.05, 1.011)[2] ?? []);
    days.forEach(([, day, spread], index) => {
      if (day === "") return;
      expect(Number(day)).toBeGreaterThanOrEqual(3 + index + 0.5);
      expect(Number(spread)).toBeGreaterThan(0.05);
    });
    expect(typeof days[0]?.[1]).toBe("number");
    expect(days.at(-1)).toEqual(["day it gets there", "", ""]);
  });

  it("never turns a stall into a finish: with two readings or nine", () => {
    for (const rows of [
      [
        [3, 1.03],
        [5, 1.03],
      ],
      [
        [0, 1.05],
        [1, 1.046],
        [2, 1.04],
        [3, 1.034],
        [4, 1.031],
        [5, 1.03],
        [6, 1.03],
        [8, 1.03],
      ],
    ] as const) {
      const answer = forecast(rows, 1.05, 1.012);
      expect(answer[0]).toEqual(["state", "stalled", expect.stringMatching(/^\d readings over \d\.\d days$/)]);
      expect(answer.slice(1).map((row) => row.slice(1))).toEqual(Array.from({ length: 5 }, () => ["", ""]));
    }
  });
});
