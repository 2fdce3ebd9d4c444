import { describe, expect, it } from "vitest";
import { call, type Answer } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, CellValue, Matrix } from "../../src/functions/describe";
import { registry } from "../../src/functions/registry";
import {
  argumentsOf,
  isScalar,
  numberPlaces,
  placesOf,
  tableColumns,
  typedValue,
  unitsOf,
  withArgument,
  type Place,
} from "../support/registry-probe";

/**
 * Values that a scalar argument may reasonably take: those of the examples and near them, and one that is refused,
 * so that errors are lifted too. Three or more, and not all alike.
 */
function valuesFor({ index, parameter }: Place, descriptor: AnyDescriptor, typed: readonly unknown[]): CellValue[] {
  const shown = typed[index] as CellValue;
  if (parameter.kind === "choice") return [...parameter.choices, "no such word", shown];
  if (parameter.kind === "text") return [shown, "no such word", shown];
  if (parameter.kind !== "number") return [];
  const own =
    typeof shown === "number" ? shown : typedValue(parameter.quantity, parameter.default ?? parameter.typical, unitsOf(descriptor, typed));
  const span = parameter.quantity === "gravity" ? 0.001 : 0.01 * Math.abs(own);
  return [own, own - span, "no number", own + span, own];
}

const oneByOne = (descriptor: AnyDescriptor, calls: readonly (readonly unknown[])[][]): Answer =>
  calls.map((row) => row.map((typed) => call(descriptor, typed)[0]?.[0] ?? "no answer"));

const liftable = registry.filter((descriptor) => descriptor.result.kind !== "grid" && placesOf(descriptor).some(isScalar));
const isError = (cell: unknown): boolean => cell instanceof CellError;

/** Every example of a function with every place of it, and with every two. */
describe.each(liftable.map((descriptor) => ({ id: descriptor.id, descriptor })))("GYLE.$id", ({ descriptor }) => {
  const scalars = placesOf(descriptor).filter(isScalar);
  const calls = descriptor.examples.map((example) => argumentsOf(descriptor, example));
  const places = calls.flatMap((typed) => scalars.map((place) => ({ typed, place, where: `${place.name} of ${JSON.stringify(typed)}` })));
  const pairs = calls.flatMap((typed) =>
    scalars.flatMap((down, at) =>
      scalars.slice(at + 1).map((across) => ({ typed, down, across, where: `${down.name} by ${across.name} of ${JSON.stringify(typed)}` })),
    ),
  );

  it("answers a column and a row of any argument as cell by cell", () => {
    expect(places.length).toBeGreaterThan(0);
    for (const { typed, place, where } of places) {
      const values = valuesFor(place, descriptor, typed);
      const expected = oneByOne(
        descriptor,
        values.map((value) => [withArgument(typed, place.index, value)]),
      );
      const column = call(
        descriptor,
        withArgument(
          typed,
          place.index,
          values.map((value) => [value]),
        ),
      );
      expect(column, where).toEqual(expected);
      expect(call(descriptor, withArgument(typed, place.index, [values])), where).toEqual([expected.flat()]);
      // The word or number that is refused fails in its own cell, and in no other.
      const refused = values.findIndex((value) => value === "no such word" || value === "no number");
      expect(column[refused]?.[0], where).toBeInstanceOf(CellError);
      expect(column.filter(([cell]) => !isError(cell)).length, where).toBeGreaterThan(0);
    }
  });

  it("answers a block of any argument as cell by cell", () => {
    for (const { typed, place, where } of places) {
      const [one, two, three = two, four = one] = valuesFor(place, descriptor, typed);
      const block: Matrix = [
        [one, two],
        [three, four],
      ];
      const expected = oneByOne(
        descriptor,
        block.map((row) => row.map((value) => withArgument(typed, place.index, value))),
      );
      expect(call(descriptor, withArgument(typed, place.index, block)), where).toEqual(expected);
    }
  });

  if (pairs.length > 0)
    it("crosses a column of one argument with a row of another", () => {
      for (const { typed, down, across, where } of pairs) {
        const rows = valuesFor(down, descriptor, typed);
        const columns = valuesFor(across, descriptor, typed);
        const crossed = withArgument(
          withArgument(
            typed,
            down.index,
            rows.map((value) => [value]),
          ),
          across.index,
          [columns],
        );
        const expected = oneByOne(
          descriptor,
          rows.map((row) => columns.map((column) => withArgument(withArgument(typed, down.index, row), across.index, column))),
        );
        expect(call(descriptor, crossed), where).toEqual(expected);
      }
    });

  if (pairs.length > 0)
    it("answers #N/A where one of two columns has ended", () => {
      for (const { typed, down, across, where } of pairs) {
        // An example in pounds or in °F would be refused as kilograms or °C before its row has ended.
        const longer = (down.name === "units" ? typed[down.index] : undefined) ?? valuesFor(down, descriptor, typed)[0] ?? null;
        const shorter = valuesFor(across, descriptor, typed)[0] ?? null;
        const answer = call(
          descriptor,
          withArgument(withArgument(typed, down.index, [[longer], [longer], [longer]]), across.index, [[shorter], [shorter]]),
        );
        const whole = call(descriptor, withArgument(withArgument(typed, down.index, longer), across.index, shorter))[0]?.[0];
        expect(answer.slice(0, 2), where).toEqual([[whole], [whole]]);
        expect(answer[2]?.[0], where).toMatchObject({
          code: "#N/A",
          message: expect.stringMatching(/^[a-z_0-9]+ ends before this row or column; give it one cell/) as string,
        });
      }
    });
});

describe.each(registry.map((descriptor) => [descriptor.id, descriptor] as const))("an error handed to GYLE.%s", (_, descriptor) => {
  const [example] = descriptor.examples;
  const typed = example === undefined ? [] : argumentsOf(descriptor, example);
  const broken = new CellError("#DIV/0!", "an input is #DIV/0!");
  const scalars = placesOf(descriptor).filter(isScalar);
  const wholes = numberPlaces(descriptor, typed).filter(({ label }) => label.includes(" row "));

  it("comes back as the same error, in whatever argument or row", () => {
    expect(scalars.length + wholes.length).toBeGreaterThan(0);
    for (const { name, index } of scalars) expect(call(descriptor, withArgument(typed, index, [[broken]]))[0]?.[0], name).toEqual(broken);
    for (const { label, put } of wholes)
      expect(
        call(
          descriptor,
          put(NaN).map((argument) => replaceNaN(argument, broken)),
        )[0]?.[0],
        label,
      ).toEqual(broken);
  });
});

/** Puts an error where `put` has put NaN. */
function replaceNaN(argument: unknown, error: CellError): unknown {
  if (Array.isArray(argument)) return argument.map((part) => replaceNaN(part, error));
  return Number.isNaN(argument) ? error : argument;
}

describe("a function that spills", () => {
  const spilling = registry.filter((descriptor) => descriptor.result.kind === "grid" && placesOf(descriptor).some(isScalar));

  it.each(spilling.map((descriptor) => [descriptor.id, descriptor] as const))(
    "GYLE.%s wants its scalars in single cells",
    (_, descriptor) => {
      const [example] = descriptor.examples;
      if (example === undefined) expect.fail("no example");
      const typed = argumentsOf(descriptor, example);
      for (const { index, name } of placesOf(descriptor).filter(isScalar)) {
        const value = typed[index] as CellValue;
        expect(call(descriptor, withArgument(typed, index, [[value], [value]]))[0]?.[0]).toMatchObject({
          code: "#VALUE!",
          message: expect.stringContaining(`${name} must be a single cell`) as string,
        });
      }
    },
  );
});

describe("these tests", () => {
  it("lift most functions, and reach lists and tables", () => {
    expect(liftable.length).toBeGreaterThan(registry.length / 2);
    expect(
      registry.some((descriptor) =>
        placesOf(descriptor).some(
          ({ parameter }) => parameter.kind === "table" && tableColumns(parameter, [Array(4).fill(null)]).length > 0,
        ),
      ),
    ).toBe(true);
  });
});
