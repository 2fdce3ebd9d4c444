import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import { describeFunction } from "../../src/functions/describe";
import { functionNamed } from "../../src/functions/registry";
import { count, words } from "../support/made-up-function";

/** A long column with fifty cells filled, as `=GYLE.BEER.ABV(A:A, B:B)` hands it over; `npm run bench` takes Excel's full height. */
const height = 60_000;
const filled = 50;
const blanks = [0, null, ""] as const;
const wholeColumn = (cell: (row: number) => number, blank: unknown): unknown[][] =>
  Array.from({ length: height }, (_, row) => [row < filled ? cell(row) : blank]);

describe("a whole column of which fifty cells are filled", () => {
  it.each(blanks)("is answered as far as it reaches, and with nothing below (an empty cell as %j)", (blank) => {
    const abv = functionNamed("BEER.ABV");
    const [before, after] = [(row: number) => 1.04 + row / 2000, (row: number) => 1.01 + row / 10000];
    const answer = call(abv, [wholeColumn(before, blank), wholeColumn(after, blank)]);
    expect(answer).toHaveLength(height);
    for (const row of [0, 7, filled - 1]) expect(answer[row]).toEqual(call(abv, [before(row), after(row)])[0]);
    expect(answer.slice(filled).every((row) => row.length === 1 && row[0] === "")).toBe(true);
    // Rows of their own: what changes one does not change another.
    expect(answer[height - 1]).not.toBe(answer[height - 2]);
  });

  const counting = () => {
    const seen: number[] = [];
    const descriptor = describeFunction({
      ...words,
      id: "TEST.COUNTING",
      parameters: { a: count("Any.", "zero") },
      result: { kind: "number", quantity: "number", doc: "Itself." },
      compute: ({ a }) => {
        seen.push(a);
        if (a === 7) throw new TypeError("not this one");
        return a;
      },
    });
    return { descriptor, seen };
  };

  it("is worked out once for each row that differs from the row above", () => {
    const { descriptor, seen } = counting();
    const answer = call(descriptor, [wholeColumn((row) => 100 + Math.floor(row / 2), 0)]);
    expect(answer).toHaveLength(height);
    expect(seen).toHaveLength(filled / 2 + 1);
    expect(answer.slice(filled).every(([cell]) => cell === 0)).toBe(true);
  });

  it("keeps a mistake in its own row, and a second range that ends sooner ends with #N/A", () => {
    const abv = functionNamed("BEER.ABV");
    const original = wholeColumn(() => 1.05, null);
    original[3] = ["1,05 SG"];
    const answer = call(abv, [original, Array.from({ length: filled }, () => [1.01])]);
    expect(answer[3]?.[0]).toBeInstanceOf(CellError);
    expect(answer[2]).toEqual(answer[4]);
    expect(answer[filled - 1]).toEqual(answer[4]);
    // Nothing is filled in there, and that comes before the other range's end.
    expect(answer[filled]).toEqual([""]);
    const turned = call(abv, [Array.from({ length: filled }, () => [1.05]), wholeColumn(() => 1.01, null)]);
    expect(turned[height - 1]?.[0]).toMatchObject({ code: "#N/A" });
  });
});

describe("a list that is a whole column", () => {
  it.each(blanks)("is what its filled cells are (an empty cell as %j)", (blank) => {
    const mix = functionNamed("WORT.MIX");
    const short = (cell: (row: number) => number) => Array.from({ length: filled }, (_, row) => [cell(row)]);
    const [volumes, gravities] = [(row: number) => 1 + row, (row: number) => 1.03 + row / 1000];
    expect(call(mix, [wholeColumn(volumes, blank), wholeColumn(gravities, blank)])).toEqual(call(mix, [short(volumes), short(gravities)]));
  });

  it("names the row of a mistake far down, and takes a last cell of its own", () => {
    const mix = functionNamed("WORT.MIX");
    const volumes: unknown[][] = wholeColumn(() => 1, null);
    const gravities: unknown[][] = wholeColumn(() => 1.05, null);
    volumes[height - 1] = [1];
    gravities[height - 1] = [1.03];
    expect(call(mix, [volumes, gravities])[0]?.[0]).toBeCloseTo(1.0496, 4);
    gravities[height - 1] = [5];
    expect(call(mix, [volumes, gravities])[0]?.[0]).toMatchObject({
      message: expect.stringContaining(`gravities row ${height}`) as string,
    });
  });
});
