import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, CellValue, Matrix } from "../../src/functions/describe";
import { registry } from "../../src/functions/registry";
import { answerOf, argumentsOf, placesOf, typedValue, unitsOf, withArgument, type Place } from "../support/registry-probe";

/** An empty cell as Excel hands it over: 0 on the desktop, null on the web, "" where a formula answers with nothing. */
const blanks: readonly CellValue[] = [0, null, ""];
const notFilledIn = [[""]];

/** Equal up to the rounding of a conversion there and back. */
function expectSame(one: (string | number)[][], other: (string | number)[][], where: string): void {
  expect(
    one.map((row) => row.length),
    where,
  ).toEqual(other.map((row) => row.length));
  one.flat().forEach((cell, index) => {
    const twin = other.flat()[index];
    if (typeof cell === "number" && typeof twin === "number")
      expect(Math.abs(cell - twin), where).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(cell)));
    else expect(cell, where).toBe(twin);
  });
}

/** The default as it would be typed. */
function typedDefault({ parameter }: Place, descriptor: AnyDescriptor, typed: readonly unknown[]): CellValue | undefined {
  if (parameter.kind === "choice") return parameter.default;
  if (parameter.kind !== "number" || parameter.default === undefined) return undefined;
  return typedValue(parameter.quantity, parameter.default, unitsOf(descriptor, typed));
}

/** Every example of a function, with every place that it is about. */
describe.each(registry.map((descriptor) => ({ id: descriptor.id, descriptor })))("GYLE.$id", ({ descriptor }) => {
  const places = placesOf(descriptor);
  const calls = descriptor.examples.map((example) => argumentsOf(descriptor, example));
  const inEach = (concerned: (place: Place, typed: readonly unknown[]) => boolean) =>
    calls.flatMap((typed) =>
      places
        .filter((place) => concerned(place, typed))
        .map((place) => ({ typed, place, where: `${place.name} of ${JSON.stringify(typed)}` })),
    );

  it("answers something when all is filled in", () => {
    expect(calls.length).toBeGreaterThan(0);
    for (const typed of calls) {
      expect(answerOf(descriptor, typed), JSON.stringify(typed)).not.toEqual(notFilledIn);
      expect(
        call(descriptor, typed)
          .flat()
          .filter((cell) => cell instanceof CellError),
        JSON.stringify(typed),
      ).toEqual([]);
    }
  });

  const required = inEach(({ parameter }) => parameter.optional !== true);
  if (required.length > 0)
    it("waits for an argument whose cell is blank, or takes it for nought", () => {
      for (const {
        typed,
        place: { index, parameter },
        where,
      } of required) {
        const answers = blanks.map((blank) => answerOf(descriptor, withArgument(typed, index, [[blank]])));
        const takesNought = parameter.kind === "number" && parameter.blank === "zero";
        if (parameter.kind === "number" && parameter.blank === "waits") {
          expect(answers.slice(1), where).toEqual([notFilledIn, notFilledIn]);
          expect(answers[0], where).not.toEqual(notFilledIn);
          continue;
        }
        // 0 °C is real for beer, and an empty cell on the desktop: it is asked about.
        if (parameter.kind === "number" && parameter.zero === "asked" && unitsOf(descriptor, typed) === "metric") {
          expect(answers[0], where).not.toEqual(notFilledIn);
          expect((call(descriptor, withArgument(typed, index, [[0]]))[0]?.[0] as CellError).message, where).toContain(
            "is 0 °C, which is also what an empty cell says",
          );
          expect(answers.slice(1), where).toEqual([notFilledIn, notFilledIn]);
          continue;
        }
        // A single 0 in a list of minutes or days is a real value.
        if (parameter.kind === "list" && parameter.blank === "zero") expect(answers[1], where).toEqual(answers[2]);
        // A table of one cell has too few columns: it is refused by its width, whatever the cell holds.
        else if (parameter.kind === "table") expect(new Set(answers.map((answer) => JSON.stringify(answer))).size, where).toBe(1);
        else if (takesNought) for (const answer of answers) expect(answer, where).toEqual(answers[0]);
        else expect(answers, where).toEqual([notFilledIn, notFilledIn, notFilledIn]);
      }
    });

  if (required.length > 0)
    it("waits when an argument is left out, unless nought is a value", () => {
      for (const {
        typed,
        place: { index, parameter },
        where,
      } of required) {
        const answer = answerOf(descriptor, withArgument(typed, index, null));
        if (parameter.kind === "number" && parameter.blank === "zero")
          expectSame(answer, answerOf(descriptor, withArgument(typed, index, 0)), where);
        else expect(answer, where).toEqual(notFilledIn);
      }
    });

  const tables = inEach(({ index, parameter }, typed) => parameter.kind === "table" && Array.isArray(typed[index]));
  if (tables.length > 0)
    it("takes an empty range for a table as not filled in", () => {
      for (const {
        typed,
        place: { index, parameter },
        where,
      } of tables) {
        const range = typed[index] as Matrix;
        for (const blank of blanks) {
          const empty = range.map((row) => row.map(() => blank));
          if (parameter.optional === true)
            expectSame(
              answerOf(descriptor, withArgument(typed, index, empty)),
              answerOf(descriptor, withArgument(typed, index, null)),
              where,
            );
          else expect(answerOf(descriptor, withArgument(typed, index, empty)), where).toEqual(notFilledIn);
        }
      }
    });

  const optionals = inEach(({ parameter }) => parameter.optional === true && (parameter.kind === "number" || parameter.kind === "choice"));
  if (optionals.length > 0)
    it("takes an argument left out, or a blank cell, for its default", () => {
      for (const { typed, place, where } of optionals) {
        const leftOut = answerOf(descriptor, withArgument(typed, place.index, null));
        const standsFor = typedDefault(place, descriptor, withArgument(typed, place.index, null));
        if (standsFor !== undefined) expectSame(answerOf(descriptor, withArgument(typed, place.index, standsFor)), leftOut, where);
        for (const blank of blanks) expectSame(answerOf(descriptor, withArgument(typed, place.index, [[blank]])), leftOut, where);
      }
    });
});
