import { afterEach, describe, expect, it, vi } from "vitest";
import { BrewingError, type BrewingErrorReason } from "../../src/core/brewing-error";
import { call, callScalar } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import { describeFunction, type AnyDescriptor } from "../../src/functions/describe";
import { choice, list, minutes, omissible, optional, units, volume } from "../../src/functions/vocabulary";
import { count, words } from "../support/made-up-function";
import { plain } from "../support/registry-probe";

/** a + 10 b, where b is 7 if it is left out. */
const sum = describeFunction({
  ...words,
  id: "TEST.SUM",
  parameters: { a: count("One."), b: optional(count("Other."), 7) },
  result: { kind: "number", quantity: "number", doc: "a + 10 b." },
  compute: ({ a, b }) => a + 10 * b,
});

const litres = describeFunction({
  ...words,
  id: "TEST.LITRES",
  parameters: { volume: volume("In L or US gal."), units },
  result: { kind: "number", quantity: "bottleVolume", doc: "In mL or US fl oz." },
  compute: ({ volume: wort }) => 1000 * wort,
});

const pair = describeFunction({
  ...words,
  id: "TEST.PAIR",
  parameters: { volume: volume("In L or US gal."), factor: optional(count("Of the second."), 2), units },
  result: { kind: "grid", doc: "Twice.", columns: ["once", "twice"] },
  compute: ({ volume: wort, factor }, { show }) => [
    [show("volume", wort), "and"],
    [factor / (factor - 3), show("volume", factor * wort)],
  ],
});

const asTyped = (descriptor: AnyDescriptor, ...typed: unknown[]) => plain(call(descriptor, typed));
const endsBefore = (argument: string): string =>
  `#N/A ${argument} ends before this row or column; give it one cell, or as many as the longest of the ranges`;

describe("the shape of an answer", () => {
  it("is one cell for single cells, however they are wrapped", () => {
    for (const one of [1, [1], [[1]]]) expect(asTyped(sum, one, 2)).toEqual([[21]]);
    expect(callScalar(sum, [[[1]], [[2]]])).toBe(21);
  });

  it("is a row for a row, also for a flat one, and a column for a column", () => {
    expect(asTyped(sum, [1, 2, 3], 0.5)).toEqual([[6, 7, 8]]);
    expect(asTyped(sum, [[1, 2, 3]], 0.5)).toEqual([[6, 7, 8]]);
    expect(asTyped(sum, [[1], [2]], 0.5)).toEqual([[6], [7]]);
  });

  it("is a block for a column beside a row, and for a block", () => {
    expect(asTyped(sum, [[1], [2]], [[1, 2, 3]])).toEqual([
      [11, 21, 31],
      [12, 22, 32],
    ]);
    expect(
      asTyped(
        sum,
        [
          [1, 2],
          [3, 4],
        ],
        [[1], [2]],
      ),
    ).toEqual([
      [11, 12],
      [23, 24],
    ]);
    expect(
      asTyped(
        sum,
        [
          [1, 2],
          [3, 4],
        ],
        [[1, 2]],
      ),
    ).toEqual([
      [11, 22],
      [13, 24],
    ]);
  });

  it("is as large as the largest range; where a shorter one has nothing stands #N/A", () => {
    expect(asTyped(sum, [[1], [2], [3]], [[1], [2]])).toEqual([[11], [22], [endsBefore("b")]]);
    expect(asTyped(sum, [[1, 2, 3]], [[1, 2]])).toEqual([[11, 22, endsBefore("b")]]);
    expect(
      asTyped(
        sum,
        [
          [1, 2],
          [3, 4],
        ],
        [
          [1, 2, 3],
          [1, 2, 3],
        ],
      ),
    ).toEqual([
      [11, 22, endsBefore("a")],
      [13, 24, endsBefore("a")],
    ]);
  });

  it("takes no range where a function spills by itself", () => {
    const refused = "#VALUE! volume must be a single cell here, since the answer spills over several cells";
    expect(asTyped(pair, [[1], [2]])).toEqual([[refused]]);
    expect(asTyped(pair, [[1, 2]])).toEqual([[refused]]);
    expect(asTyped(pair, 1, [[1], [2]])).toEqual([[refused.replace("volume", "factor")]]);
  });
});

describe("an optional argument", () => {
  it("takes its default when it is left out, undefined, or points at an empty cell", () => {
    for (const nothing of [undefined, null, "", [[""]], [[null]]]) expect(asTyped(sum, 1, nothing)).toEqual([[71]]);
    expect(asTyped(sum, 1)).toEqual([[71]]);
  });

  it("takes its default cell by cell within a range", () => {
    expect(asTyped(sum, 1, [["", 2]])).toEqual([[71, 21]]);
    expect(asTyped(sum, 1, [[null], [2]])).toEqual([[71], [21]]);
  });

  const measured = describeFunction({
    ...words,
    id: "TEST.MEASURED",
    parameters: {
      rest: omissible({
        kind: "table",
        doc: "A table.",
        columns: { name: { kind: "text", doc: "A name." }, minutes: minutes("How long.") },
        layouts: [["name", "minutes"]],
      } as const),
      days: omissible(list("days", "A list.", { limits: { atLeast: 0, atMost: 10 }, typical: 1 })),
    },
    result: { kind: "text", doc: "What came in." },
    compute: ({ rest, days }) => `${rest === undefined ? "no table" : rest.length} ${days === undefined ? "no list" : days.length}`,
  });

  it("that is a range reaches the function as undefined, also when it points at one empty cell", () => {
    for (const nothing of [null, "", [[""]], [[null]]]) expect(asTyped(measured, nothing, nothing)).toEqual([["no table no list"]]);
    expect(asTyped(measured, [["mash", 60]], [[1], [""], [3]])).toEqual([["1 3"]]);
  });
});

describe("units", () => {
  it("turn what goes in and what comes out, cell by cell", () => {
    expect(callScalar(litres, [2])).toBe(2000);
    // A US gallon is 128 US fluid ounces.
    expect(callScalar(litres, [2, "us"])).toBeCloseTo(256, 9);
    expect(callScalar(litres, [2, " US "])).toBeCloseTo(256, 9);
    const [metric, us] = call(litres, [2, [["metric"], ["us"]]]).flat();
    expect(metric).toBe(2000);
    expect(us).toBeCloseTo(256, 9);
  });

  it("are metric when left out, and refused when they are a third kind", () => {
    for (const nothing of [null, "", 0]) expect(callScalar(litres, [2, nothing])).toBe(2000);
    expect(asTyped(litres, 2, "imperial")).toEqual([['#VALUE! units is the text "imperial"; it must be one of: metric, us']]);
  });

  it("have a table read anew for each", () => {
    const seen: unknown[] = [];
    const totals = describeFunction({
      ...words,
      id: "TEST.TOTALS",
      parameters: {
        vessels: { kind: "table", doc: "Vessels.", columns: { volume: volume("What it holds.") }, layouts: [["volume"]] },
        share: count("Of it."),
        units,
      },
      result: { kind: "number", quantity: "volume", doc: "Their sum." },
      compute: ({ vessels, share }) => {
        seen.push(vessels);
        return share * vessels.reduce((all, vessel) => all + vessel.volume, 0);
      },
    });
    const column = call(totals, [
      [[1], [2]],
      [[1], [2], [1], [2]],
      [["metric"], ["metric"], ["us"], ["us"]],
    ]).flat();
    column.forEach((cell, index) => expect(cell).toBeCloseTo(index % 2 === 0 ? 3 : 6, 9));
    expect(seen[1]).toBe(seen[0]);
    expect(seen[3]).toBe(seen[2]);
    expect(seen[2]).not.toBe(seen[0]);
  });
});

describe("an answer that is none", () => {
  const answering = (computed: number | "") =>
    describeFunction({
      ...words,
      id: "TEST.FIXED",
      parameters: { a: count("Any.") },
      result: { kind: "number", quantity: "number", doc: "Fixed." },
      compute: () => computed,
    });

  it("is #NUM! where it is not finite, in its own cell of a spill", () => {
    for (const strange of [NaN, Infinity, -Infinity]) expect(asTyped(answering(strange), 1)).toEqual([["#NUM! there is no finite answer"]]);
    expect(asTyped(pair, 1, 3)).toEqual([
      [1, "and"],
      ["#NUM! there is no finite answer", 3],
    ]);
    expect(asTyped(pair, 1, 4)).toEqual([
      [1, "and"],
      [4, 4],
    ]);
  });

  it("stays empty where a function that was asked has no answer yet", () => {
    expect(asTyped(answering(""), 1)).toEqual([[""]]);
  });

  it("waits for a required argument, in its own cell, and in one cell where the function spills", () => {
    expect(asTyped(sum, [[1], [""], [3]], 1)).toEqual([[11], [""], [13]]);
    expect(asTyped(pair, "")).toEqual([[""]]);
  });
});

describe("an error", () => {
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it("in an input stands in its own cell of the answer, code and words", () => {
    const broken = new CellError("#DIV/0!", "an input is #DIV/0!");
    expect(call(sum, [[[1], [broken], [3]], 1])).toEqual([[11], [broken], [13]]);
    expect(call(sum, [1, broken])).toEqual([[broken]]);
    expect(call(litres, [1, broken])).toEqual([[broken]]);
    expect(call(pair, [broken])).toEqual([[broken]]);
  });

  const refusing = (problem: unknown) =>
    describeFunction({
      ...words,
      id: "TEST.REFUSING",
      parameters: { a: count("Any.") },
      result: { kind: "number", quantity: "number", doc: "None." },
      compute: () => {
        throw problem;
      },
    });

  const codes: readonly (readonly [BrewingErrorReason, string])[] = [
    ["impossible", "#VALUE!"],
    ["uncovered", "#N/A"],
    ["unsolvable", "#NUM!"],
  ];
  it.each(codes)("of the core that is %s becomes %s with its words", (reason, code) => {
    expect(asTyped(refusing(new BrewingError(reason, "beer cannot do that")), 1)).toEqual([[`${code} beer cannot do that`]]);
  });

  it("of ours is written to the log, and shows nothing of its inside", () => {
    const log = vi.spyOn(console, "error").mockImplementation(() => undefined);
    const slip = new TypeError("cannot read properties of undefined");
    expect(asTyped(refusing(slip), [[1], [""]])).toEqual([["#VALUE! internal error in GYLE.TEST.REFUSING"], [""]]);
    expect(log.mock.calls).toEqual([["GYLE.TEST.REFUSING", slip]]);
  });
});

describe("a word of a choice", () => {
  const chosen = describeFunction({
    ...words,
    id: "TEST.CHOSEN",
    parameters: { kind: choice("One of two.", ["Ale", "lager"]) },
    result: { kind: "text", doc: "The word." },
    compute: ({ kind }) => kind,
  });

  it("is known in any case and with spaces around it, and comes back as it is written here", () => {
    for (const typed of ["Ale", "ale", " ALE "]) expect(callScalar(chosen, [typed])).toBe("Ale");
    expect(asTyped(chosen, "porter")).toEqual([['#VALUE! kind is the text "porter"; it must be one of: Ale, lager']]);
    expect(asTyped(chosen, true)).toEqual([["#VALUE! kind is TRUE; it must be one of: Ale, lager"]]);
    for (const nothing of [0, "", " ", null]) expect(callScalar(chosen, [nothing])).toBe("");
  });
});
