import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { call, type Answer } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, Matrix } from "../../src/functions/describe";
import { quantity, type QuantityName } from "../../src/functions/quantities";
import { registry } from "../../src/functions/registry";
import { arbitraryCall, typedCall, type CoreArgument } from "../support/arbitrary-call";
import { allDrawn } from "../support/drawn";
import { placesOf, withArgument } from "../support/registry-probe";

/** Over the whole domain of every function, as its description states it. The made-up calls are the same each time. */
const settings = { seed: 1125, numRuns: 60 };
const everyFunction = registry.map((descriptor) => [descriptor.id, descriptor] as const);

afterEach(() => vi.restoreAllMocks());

/** A bug of ours is logged; a brewer's mistake is not. */
function quietly<T>(run: () => T): T {
  const logged = vi.spyOn(console, "error").mockImplementation(() => undefined);
  const result = run();
  expect(logged.mock.calls).toEqual([]);
  logged.mockRestore();
  return result;
}

function expectProper(answer: Answer): void {
  expect(answer.length).toBeGreaterThan(0);
  for (const cell of answer.flat()) {
    if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
    else if (cell instanceof CellError) {
      expect(cell.message).not.toMatch(/internal error|NaN|undefined|Infinity|\[object/);
      expect(cell.message.length).toBeGreaterThan(10);
      expect(["#VALUE!", "#N/A", "#NUM!", "#DIV/0!"]).toContain(cell.code);
    } else expect(typeof cell).toBe("string");
  }
}

const hasNumber = (answer: Answer): boolean =>
  answer.flat().some((cell) => typeof cell === "number" || (typeof cell === "string" && cell !== ""));

describe.each(everyFunction)("GYLE.%s, whatever is typed within its limits", (_, descriptor) => {
  it("answers with a finite number, words, or an error with its reason", () => {
    let answered = 0;
    fc.assert(
      fc.property(arbitraryCall(descriptor), (core) => {
        const answer = quietly(() => call(descriptor, typedCall(descriptor, core, "metric")));
        expectProper(answer);
        if (hasNumber(answer)) answered += 1;
      }),
      { ...settings, numRuns: 100 },
    );
    // Calls that are all refused would prove nothing.
    if (allDrawn) expect(answered).toBeGreaterThan(5);
  });

  const slips = fc.constantFrom<unknown>(
    true,
    "a word",
    "",
    null,
    -1,
    0,
    1e-300,
    1e300,
    -273.15,
    [[1], [2], [3]],
    [
      [1, 2],
      [3, 4],
    ],
    [["a", "b", "c"]],
    [[]],
    new CellError("#DIV/0!", "an input is #DIV/0!"),
  );

  it("keeps its manners with a slip of the hand in any place", () => {
    fc.assert(
      fc.property(arbitraryCall(descriptor), fc.nat({ max: placesOf(descriptor).length - 1 }), slips, (core, place, slip) => {
        expectProper(quietly(() => call(descriptor, withArgument(typedCall(descriptor, core, "metric"), place, slip))));
      }),
      settings,
    );
  });
});

const inBothSystems = registry
  .filter((descriptor) => placesOf(descriptor).some(({ name }) => name === "units"))
  .map((descriptor) => [descriptor.id, descriptor] as const);

const close = (one: number, other: number, within = 1e-7): boolean =>
  Math.abs(one - other) <= within * Math.max(1e-6, Math.abs(one), Math.abs(other));

/** What the numbers of a block are, column by column, or in its second column row by row; a column of words has none. */
const blocks: Readonly<Record<string, readonly (QuantityName | undefined)[] | { readonly byRow: readonly (QuantityName | undefined)[] }>> =
  {
    "WORT.BILL": ["mass"],
    "HOPS.DRY": { byRow: ["hopRate", "bitterness"] },
    "HOPS.SHARE": ["bitterness"],
    "YEAST.STEPS": [undefined, "volume", "cells"],
    "WATER.BUDGET": [undefined, "volume"],
    "WATER.IONS": [undefined, "concentration"],
    // Volume of either water, then grams and mg/L, which have one unit in both systems.
    "WATER.TARGET": { byRow: ["volume", "volume", ...Array<QuantityName>(14).fill("grams")] },
    "MASH.RUNNINGS": [undefined, "volume", "gravity"],
    "BEER.ADDED": { byRow: ["gravity", "percent"] },
    "PACK.DOSE": ["grams", "grams"],
    "PACK.BOTTLES": ["count", "volume"],
    "DAY.TIMELINE": ["date", "minutes"],
  };

function quantityAt(id: string, index: number, width: number): QuantityName | undefined {
  // The second row of the runnings is the efficiency.
  if (id === "MASH.RUNNINGS" && Math.floor(index / width) === 1) return "percent";
  const block = blocks[id];
  return block !== undefined && "byRow" in block ? block.byRow[Math.floor(index / width)] : block?.[index % width];
}

/** The same amounts in litres and in gallons. Of words, those before the first figure. */
function expectSamePhysics(descriptor: AnyDescriptor, metric: Answer, us: Answer): void {
  expect(us.map((row) => row.length)).toEqual(metric.map((row) => row.length));
  metric.flat().forEach((one, index) => {
    const other = us.flat()[index];
    if (one instanceof CellError || other instanceof CellError) expect(other).toMatchObject({ code: (one as CellError).code });
    else if (typeof one === "number" && typeof other === "number") {
      const name =
        descriptor.result.kind === "number"
          ? (descriptor.result.quantity as QuantityName)
          : quantityAt(descriptor.id, index, metric[0]?.length ?? 1);
      if (name === undefined) return expect.fail(`what is column ${index} of ${descriptor.id}?`);
      const [core, twin] = [quantity(name).toCore(one, "metric"), quantity(name).toCore(other, "us")];
      expect(close(core, twin), `${core} and ${twin}`).toBe(true);
    } else if (typeof one === "string" && one === quantity("volume").unit.metric) expect(other).toBe(quantity("volume").unit.us);
    else if (descriptor.id !== "DAY.TIMELINE") expect(String(other).split(/\d/)[0]).toBe(String(one).split(/\d/)[0]);
  });
}

describe.each(inBothSystems)("GYLE.%s in litres and in gallons", (_, descriptor) => {
  it("says the same of the same brew", () => {
    fc.assert(
      fc.property(arbitraryCall(descriptor), (core) => {
        expectSamePhysics(
          descriptor,
          call(descriptor, typedCall(descriptor, core, "metric")),
          call(descriptor, typedCall(descriptor, core, "us")),
        );
      }),
      settings,
    );
  });
});

/** Functions that answer row for row: their answer is turned round with the rows. */
const rowForRow = ["WORT.BILL", "HOPS.SHARE", "PACK.DOSE"];
/** Where the order is the meaning. */
const inOrder: Readonly<Record<string, string>> = {
  "DAY.TIMELINE": "the steps follow one another",
  "GAUGE.SPREAD": "the arguments have their places",
  "WATER.BALANCE": "the six ions have their places",
};
const ofRows = registry
  .filter(
    (descriptor) =>
      !(descriptor.id in inOrder) &&
      placesOf(descriptor).some(({ parameter }) => parameter.kind === "table" || parameter.kind === "list" || parameter.kind === "block"),
  )
  .map((descriptor) => [descriptor.id, descriptor] as const);

function expectClose(one: Answer, other: Answer): void {
  expect(other.map((row) => row.length)).toEqual(one.map((row) => row.length));
  one.flat().forEach((cell, index) => {
    const twin = other.flat()[index];
    if (typeof cell === "number" && typeof twin === "number") expect(close(cell, twin, 1e-9), `${cell} and ${twin}`).toBe(true);
    else if (cell instanceof CellError) expect(twin).toMatchObject({ code: cell.code });
    else expect(twin).toEqual(cell);
  });
}

describe.each(ofRows)("GYLE.%s with its rows in another order", (id, descriptor) => {
  const places = placesOf(descriptor);
  // What is asked for one by one (`at`), waters with fixed places, and batches that follow one another stay.
  const stays = (index: number): boolean => ["at", "base", "target", "sparge_water"].includes(places[index]?.name ?? "");
  const rowsOf = (core: readonly CoreArgument[]): number =>
    Math.max(...core.map((argument, index) => (Array.isArray(argument) && !stays(index) ? argument.length : 0)));
  const inOrder = (rows: Matrix<number | string | null>, order: readonly number[]) =>
    order.flatMap((row) => (rows[row] === undefined ? [] : [rows[row]]));
  const shuffled = (core: readonly CoreArgument[], order: readonly number[]): CoreArgument[] =>
    core.map((argument, index) =>
      Array.isArray(argument) && !stays(index) ? inOrder(argument as Matrix<number | string | null>, order) : argument,
    );

  it("gives the same", () => {
    fc.assert(
      fc.property(
        arbitraryCall(descriptor).chain((core) =>
          fc.tuple(fc.constant(core), fc.shuffledSubarray([...Array(rowsOf(core)).keys()], { minLength: rowsOf(core) })),
        ),
        ([core, order]) => {
          const answer = call(descriptor, typedCall(descriptor, core, "metric"));
          const other = call(descriptor, typedCall(descriptor, shuffled(core, order), "metric"));
          const wanted =
            rowForRow.includes(id) && answer.length === order.length
              ? (inOrder(answer as Matrix<number | string | null>, order) as Answer)
              : answer;
          expectClose(wanted, other);
        },
      ),
      settings,
    );
  });
});
