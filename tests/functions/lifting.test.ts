import { describe, expect, it } from "vitest";
import { call, type Answer } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, CellValue, Matrix } from "../../src/functions/describe";
import { registry } from "../../src/functions/registry";
import { argumentsOf, isScalar, numberPlaces, placesOf, tableColumns, typedValue, unitsOf, withArgument, type Place } from "../support/registry-probe";

/**
 * Values that a scalar argument may reasonably take: those of the examples and near them, and one that is refused,
 * so that errors are lifted too. Three or more, and not all alike.
 */
function valuesFor({ index, parameter }: Place, descriptor: AnyDescriptor, typed: readonly unknown[]): CellValue[] {
  const shown = typed[index] as CellValue;
  if (parameter.kind === "choice") return [...parameter.choices, "no such word", shown];
  if (parameter.kind === "text") return [shown, "no such word", shown];
  if (parameter.kind !== "number") return [];
  const own = typeof shown === "number" ? shown : typedValue(parameter.quantity, parameter.default ?? parameter.typical, unitsOf(descriptor, typed));
  const span = parameter.quantity === "gravity" ? 0.001 : 0.01 * Math.abs(own);
  return [own, own - span, "no number", own + span, own];
}

const oneByOne = (descriptor: AnyDescriptor, calls: readonly (readonly unknown[])[][]): Answer =>
  calls.map((row) => row.map((typed) => call(descriptor, typed)[0]?.[0] ?? "no answer"));

const liftable = registry.filter((descriptor) => descriptor.result.kind !== "grid" && placesOf(descriptor).some(isScalar));
const isError = (cell: unknown): boolean => cell instanceof CellError;

describe.each(liftable.flatMap((descriptor) => descriptor.examples.map((example) => ({ id: descriptor.id, descriptor, typed: argumentsOf(descriptor, example), as: JSON.stringify(example.arguments) }))))(
  "GYLE.$id $as",
  ({ descriptor, typed }) => {
    const scalars = placesOf(descriptor).filter(isScalar);

    it.each(scalars)("answers a column and a row of $name as cell by cell", (place) => {
      const values = valuesFor(place, descriptor, typed);
      const expected = oneByOne(descriptor, values.map((value) => [withArgument(typed, place.index, value)]));
      const column = call(descriptor, withArgument(typed, place.index, values.map((value) => [value])));
      expect(column).toEqual(expected);
      expect(call(descriptor, withArgument(typed, place.index, [values]))).toEqual([expected.flat()]);
      // The word or number that is refused fails in its own cell, and in no other.
      const refused = values.findIndex((value) => value === "no such word" || value === "no number");
      expect(column[refused]?.[0]).toBeInstanceOf(CellError);
      expect(column.filter(([cell]) => !isError(cell)).length).toBeGreaterThan(0);
    });

    it.each(scalars)("answers a block of $name as cell by cell", (place) => {
      const [one, two, three = two, four = one] = valuesFor(place, descriptor, typed);
      const block: Matrix = [[one, two], [three, four]];
      const expected = oneByOne(descriptor, block.map((row) => row.map((value) => withArgument(typed, place.index, value))));
      expect(call(descriptor, withArgument(typed, place.index, block))).toEqual(expected);
    });

    const pairs = scalars.flatMap((down, at) => scalars.slice(at + 1).map((across) => ({ down, across, names: `${down.name} by ${across.name}` })));

    it.each(pairs)("crosses a column with a row: $names", ({ down, across }) => {
      const rows = valuesFor(down, descriptor, typed);
      const columns = valuesFor(across, descriptor, typed);
      const crossed = withArgument(withArgument(typed, down.index, rows.map((value) => [value])), across.index, [columns]);
      const expected = oneByOne(descriptor, rows.map((row) => columns.map((column) => withArgument(withArgument(typed, down.index, row), across.index, column))));
      expect(call(descriptor, crossed)).toEqual(expected);
    });

    it.each(pairs)("answers #N/A where one of two columns has ended: $names", ({ down, across }) => {
      // An example in pounds or in °F would be refused as kilograms or °C before its row has ended.
      const longer = (down.name === "units" ? typed[down.index] : undefined) ?? valuesFor(down, descriptor, typed)[0] ?? null;
      const shorter = valuesFor(across, descriptor, typed)[0] ?? null;
      const answer = call(descriptor, withArgument(withArgument(typed, down.index, [[longer], [longer], [longer]]), across.index, [[shorter], [shorter]]));
      const whole = call(descriptor, withArgument(withArgument(typed, down.index, longer), across.index, shorter))[0]?.[0];
      expect(answer.slice(0, 2)).toEqual([[whole], [whole]]);
      expect(answer[2]?.[0]).toMatchObject({ code: "#N/A", message: expect.stringMatching(/^[a-z_0-9]+ ends before this row or column; give it one cell/) as string });
    });
  },
);

describe.each(registry.map((descriptor) => [descriptor.id, descriptor] as const))("an error handed to GYLE.%s", (_, descriptor) => {
  const [example] = descriptor.examples;
  const typed = example === undefined ? [] : argumentsOf(descriptor, example);
  const broken = new CellError("#DIV/0!", "an input is #DIV/0!");

  it.each(placesOf(descriptor).filter(isScalar))("in $name comes back as the same error", ({ index }) => {
    expect(call(descriptor, withArgument(typed, index, [[broken]]))[0]?.[0]).toEqual(broken);
  });

  const wholes = numberPlaces(descriptor, typed).filter(({ label }) => label.includes(" row "));
  it.each(wholes)("in $label comes back as the same error", ({ put }) => {
    const answer = call(descriptor, put(NaN).map((argument) => replaceNaN(argument, broken)));
    expect(answer[0]?.[0]).toEqual(broken);
  });
});

/** Puts an error where `put` has put NaN. */
function replaceNaN(argument: unknown, error: CellError): unknown {
  if (Array.isArray(argument)) return argument.map((part) => replaceNaN(part, error));
  return Number.isNaN(argument) ? error : argument;
}

describe("a function that spills", () => {
  const spilling = registry.filter((descriptor) => descriptor.result.kind === "grid" && placesOf(descriptor).some(isScalar));

  it.each(spilling.map((descriptor) => [descriptor.id, descriptor] as const))("GYLE.%s wants its scalars in single cells", (_, descriptor) => {
    const [example] = descriptor.examples;
    if (example === undefined) expect.fail("no example");
    const typed = argumentsOf(descriptor, example);
    for (const { index, name } of placesOf(descriptor).filter(isScalar)) {
      const value = typed[index] as CellValue;
      expect(call(descriptor, withArgument(typed, index, [[value], [value]]))[0]?.[0]).toMatchObject({ code: "#VALUE!", message: expect.stringContaining(`${name} must be a single cell`) as string });
    }
  });
});

describe("these tests", () => {
  it("lift most functions, and reach lists and tables", () => {
    expect(liftable.length).toBeGreaterThan(registry.length / 2);
    expect(registry.some((descriptor) => placesOf(descriptor).some(({ parameter }) => parameter.kind === "table" && tableColumns(parameter, [Array(4).fill(null)]).length > 0))).toBe(true);
  });
});
