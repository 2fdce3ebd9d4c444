import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readingsInOrder } from "../../../src/core/log/readings";
import { steadiness } from "../../../src/core/log/steady";

const verdict = (rows: readonly (readonly [number, number])[], expected?: number, tolerance = 0.001) =>
  steadiness(
    readingsInOrder(
      rows.map(([day]) => day),
      rows.map(([, gravity]) => gravity),
    ),
    tolerance,
    { expectedGravity: expected },
  );

describe("steadiness", () => {
  it("needs two readings a day apart, allowing an hour", () => {
    expect(verdict([[5, 1.012]])).toBe("working");
    expect(
      verdict([
        [5, 1.012],
        [5 + 22.9 / 24, 1.012],
      ]),
    ).toBe("working");
    expect(
      verdict([
        [5, 1.012],
        [5 + 23 / 24, 1.012],
      ]),
    ).toBe("steady");
    expect(
      verdict([
        [46114 + 0.8, 1.012],
        [46115 + 0.8 - 1 / 24, 1.012],
      ]),
    ).toBe("steady");
  });

  it("lets readings differ by the tolerance and no more", () => {
    expect(
      verdict([
        [1, 1.013],
        [2, 1.012],
      ]),
    ).toBe("steady");
    expect(
      verdict([
        [1, 1.0131],
        [2, 1.012],
      ]),
    ).toBe("nearly");
    expect(
      verdict(
        [
          [1, 1.014],
          [2, 1.012],
        ],
        undefined,
        0.002,
      ),
    ).toBe("steady");
  });

  it("wants the readings between to agree as well", () => {
    expect(
      verdict([
        [1, 1.012],
        [1.5, 1.0135],
        [2, 1.012],
      ]),
    ).not.toBe("steady");
    expect(
      verdict([
        [1, 1.012],
        [1.5, 1.0125],
        [2, 1.012],
      ]),
    ).toBe("steady");
  });

  it("tells the tail of a fermentation from its middle by the fall in a day", () => {
    expect(
      verdict([
        [3, 1.02],
        [4, 1.016],
      ]),
    ).toBe("working");
    expect(
      verdict([
        [3, 1.014],
        [4, 1.012],
      ]),
    ).toBe("nearly");
    expect(
      verdict([
        [2, 1.02],
        [6, 1.012],
      ]),
    ).toBe("nearly");
    expect(
      verdict([
        [2, 1.021],
        [6, 1.012],
      ]),
    ).toBe("working");
    expect(
      verdict([
        [3, 1.01401],
        [4, 1.012],
      ]),
    ).toBe("working");
  });

  it("calls beer stalled when it stands still more than 0.003 above the expected gravity", () => {
    expect(
      verdict(
        [
          [5, 1.015],
          [6, 1.015],
        ],
        1.012,
      ),
    ).toBe("steady");
    expect(
      verdict(
        [
          [5, 1.016],
          [6, 1.016],
        ],
        1.012,
      ),
    ).toBe("stalled");
    expect(
      verdict(
        [
          [5, 1.01503],
          [6, 1.01503],
        ],
        1.012,
      ),
    ).toBe("stalled");
    expect(
      verdict(
        [
          [0, 1.05],
          [1, 1.05],
        ],
        1.012,
      ),
    ).toBe("not begun");
    expect(
      verdict(
        [
          [5, 1.004],
          [6, 1.004],
        ],
        1.012,
      ),
    ).toBe("steady");
  });

  it("does not call a beer steady that creeps down by a line every day", () => {
    const creeping = [
      [1, 1.016],
      [2, 1.015],
      [3, 1.014],
      [4, 1.013],
      [5, 1.012],
    ] as const;
    for (let days = 3; days <= 5; days += 1) expect(verdict(creeping.slice(0, days), 1.012)).toBe("nearly");
    expect(
      verdict([
        [1, 1.014],
        [3, 1.013],
        [5, 1.012],
      ]),
    ).toBe("nearly");
    expect(
      verdict([
        [1, 1.0115],
        [2, 1.011],
        [3, 1.0105],
        [4, 1.01],
      ]),
    ).toBe("nearly");
    // One equal reading is not enough for so slow a fall; four days of them are.
    expect(verdict([...creeping, [6, 1.012]])).toBe("nearly");
    expect(verdict([...creeping, [6, 1.012], [7, 1.012], [8, 1.012], [9, 1.012]])).toBe("steady");
    // Two that differ by a line are rest when no others are known.
    expect(
      verdict([
        [0, 1.05],
        [5, 1.013],
        [6, 1.012],
      ]),
    ).toBe("steady");
    expect(
      verdict([
        [4, 1.013],
        [5, 1.0122],
        [6, 1.0121],
        [7, 1.0119],
      ]),
    ).toBe("steady");
    // Half a line in two days is rest, whatever went before.
    expect(
      verdict([
        [0, 1.03],
        [2, 1.017],
        [4, 1.0125],
        [6, 1.012],
      ]),
    ).toBe("steady");
    // Far above its end a beer that still falls is at work.
    expect(
      verdict(
        [
          [0, 1.05],
          [1, 1.032],
          [2, 1.031],
          [3, 1.03],
        ],
        1.012,
      ),
    ).toBe("working");
  });

  it("lets no beer pass that lost a line a day for as long as it was read", () => {
    const daily = fc.integer({ min: 3, max: 9 });
    const fall = fc.integer({ min: 600, max: 1000 }).map((millionths) => millionths / 1e6);
    fc.assert(
      fc.property(
        daily,
        fall,
        (days, each) =>
          verdict([[0, 1.05], ...Array.from({ length: days }, (_, day) => [day + 1, 1.022 - day * each] as const)]) === "nearly",
      ),
    );
  });

  it("reports a reading that went up by more than twice the tolerance, from any earlier one", () => {
    expect(
      verdict([
        [1, 1.012],
        [3, 1.014],
      ]),
    ).not.toBe("rising");
    expect(
      verdict([
        [1, 1.012],
        [3, 1.0145],
      ]),
    ).toBe("rising");
    expect(
      verdict([
        [1, 1.012],
        [3, 1.01401],
      ]),
    ).toBe("rising");
    expect(
      verdict([
        [1, 1.01],
        [2, 1.014],
        [3, 1.014],
      ]),
    ).toBe("rising");
  });

  it("has nothing to say about no readings", () => {
    expect(() => verdict([])).toThrow("at least one reading");
  });

  it("does not care for the order of the rows", () => {
    const readings = fc.array(
      fc.tuple(
        fc.integer({ min: 1, max: 40 }).map((half) => half / 2),
        fc.integer({ min: 1000, max: 1060 }).map((points) => points / 1000),
      ),
      {
        minLength: 1,
        maxLength: 8,
      },
    );
    fc.assert(
      fc.property(readings, fc.option(fc.constant(1.012), { nil: undefined }), (rows, expected) => {
        expect(verdict([...rows].reverse(), expected)).toBe(verdict(rows, expected));
      }),
    );
  });

  it("never calls a beer finished that fell by more than the tolerance in the last day", () => {
    const fall = fc.integer({ min: 1101, max: 20000 }).map((millionths) => millionths / 1e6);
    fc.assert(
      fc.property(fall, (gravityLost) => {
        expect(["nearly", "working"]).toContain(
          verdict(
            [
              [4, 1.01 + gravityLost],
              [5, 1.01],
            ],
            1.008,
          ),
        );
      }),
    );
  });
});

describe("readingsInOrder", () => {
  it("passes over rows without a reading and headings", () => {
    expect(readingsInOrder([null, 1, 2, 3], [null, 1.05, null, 1.02])).toEqual([
      { day: 1, gravity: 1.05 },
      { day: 3, gravity: 1.02 },
    ]);
  });

  it("passes over a gravity beside a heading", () => {
    expect(readingsInOrder([null, 2], [1.05, 1.02])).toEqual([{ day: 2, gravity: 1.02 }]);
  });

  it("takes 0 for the day of pitching among days, for a missing date among dates", () => {
    expect(readingsInOrder([0, 3], [1.05, 1.02])).toHaveLength(2);
    expect(readingsInOrder([0, 46114], [1.012, 1.012])).toEqual([{ day: 46114, gravity: 1.012 }]);
    expect(readingsInOrder([0, 1000], [1.05, 1.02])).toHaveLength(2);
    expect(readingsInOrder([0, 1005], [1.05, 1.02])).toHaveLength(1);
  });
});
