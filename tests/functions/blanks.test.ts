import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, CellValue, Matrix } from "../../src/functions/describe";
import { registry } from "../../src/functions/registry";
import { answerOf, argumentsOf, placesOf, typedValue, unitsOf, withArgument, type Place } from "../support/registry-probe";

/** An empty cell as Excel hands it over: 0 on the desktop, null on the web, "" where a formula answers with nothing. */
const blanks: readonly CellValue[] = [0, null, ""];
const notFilledIn = [[""]];

const cases = registry.flatMap((descriptor) =>
  descriptor.examples.map((example) => ({ id: descriptor.id, descriptor, typed: argumentsOf(descriptor, example), as: JSON.stringify(example.arguments) })),
);

/** Equal up to the rounding of a conversion there and back. */
function expectSame(one: (string | number)[][], other: (string | number)[][]): void {
  expect(one.map((row) => row.length)).toEqual(other.map((row) => row.length));
  one.flat().forEach((cell, index) => {
    const twin = other.flat()[index];
    if (typeof cell === "number" && typeof twin === "number") expect(Math.abs(cell - twin)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(cell)));
    else expect(cell).toBe(twin);
  });
}

/** The default as it would be typed. */
function typedDefault({ parameter }: Place, descriptor: AnyDescriptor, typed: readonly unknown[]): CellValue | undefined {
  if (parameter.kind === "choice") return parameter.default;
  if (parameter.kind !== "number" || parameter.default === undefined) return undefined;
  return typedValue(parameter.quantity, parameter.default, unitsOf(descriptor, typed));
}

describe.each(cases)("GYLE.$id $as", ({ descriptor, typed }) => {
  const places = placesOf(descriptor);

  it("answers something when all is filled in", () => {
    expect(answerOf(descriptor, typed)).not.toEqual(notFilledIn);
    expect(call(descriptor, typed).flat().filter((cell) => cell instanceof CellError)).toEqual([]);
  });

  const required = places.filter(({ parameter }) => parameter.optional !== true);
  it.each(required)("waits for $name, or takes its blank cell for nought", ({ index, parameter }) => {
    const answers = blanks.map((blank) => answerOf(descriptor, withArgument(typed, index, [[blank]])));
    const takesNought = parameter.kind === "number" && parameter.blank === "zero";
    if (parameter.kind === "number" && parameter.blank === "waits") {
      expect(answers.slice(1)).toEqual([notFilledIn, notFilledIn]);
      expect(answers[0]).not.toEqual(notFilledIn);
      return;
    }
    // A single 0 in a list of minutes or days is a real value.
    if (parameter.kind === "list" && parameter.blank === "zero") expect(answers[1]).toEqual(answers[2]);
    // A table of one cell has too few columns: it is refused by its width, whatever the cell holds.
    else if (parameter.kind === "table") expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
    else if (takesNought) for (const answer of answers) expect(answer).toEqual(answers[0]);
    else expect(answers).toEqual([notFilledIn, notFilledIn, notFilledIn]);
  });

  it.each(required)("waits when $name is left out, unless nought is a value", ({ index, parameter }) => {
    if (parameter.kind === "number" && parameter.blank === "zero") expectSame(answerOf(descriptor, withArgument(typed, index, null)), answerOf(descriptor, withArgument(typed, index, 0)));
    else expect(answerOf(descriptor, withArgument(typed, index, null))).toEqual(notFilledIn);
  });

  const tables = places.filter(({ index, parameter }) => parameter.kind === "table" && Array.isArray(typed[index]));
  it.each(tables)("takes an empty range for $name as not filled in", ({ index, parameter }) => {
    const range = typed[index] as Matrix;
    for (const blank of blanks) {
      const empty = range.map((row) => row.map(() => blank));
      if (parameter.optional === true) expectSame(answerOf(descriptor, withArgument(typed, index, empty)), answerOf(descriptor, withArgument(typed, index, null)));
      else expect(answerOf(descriptor, withArgument(typed, index, empty))).toEqual(notFilledIn);
    }
  });

  const optionals = places.filter(({ parameter }) => parameter.optional === true && (parameter.kind === "number" || parameter.kind === "choice"));
  it.each(optionals)("takes $name left out, or a blank cell, for its default", (place) => {
    const leftOut = answerOf(descriptor, withArgument(typed, place.index, null));
    const standsFor = typedDefault(place, descriptor, withArgument(typed, place.index, null));
    if (standsFor !== undefined) expectSame(answerOf(descriptor, withArgument(typed, place.index, standsFor)), leftOut);
    for (const blank of blanks) expectSame(answerOf(descriptor, withArgument(typed, place.index, [[blank]])), leftOut);
  });
});
