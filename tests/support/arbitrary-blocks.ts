import fc from "fast-check";
import { forSheet, type Column, type Field, type Fields, type On, type Single } from "../../src/workbook/batch/describe/field";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { blockFields, blocksFor } from "../../src/workbook/batch/fields/blocks";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);

/** What a sheet may hold in one cell, by its description alone. */
function single(field: Single | Column, on: On, words: fc.Arbitrary<string>): fc.Arbitrary<unknown> {
  const orBlank = (one: fc.Arbitrary<unknown>) => ("blank" in field && field.blank ? fc.oneof(fc.constant(""), one) : one);
  switch (field.kind) {
    case "number": {
      const [from, to] = forSheet(field.limits, on);
      const figure = field.whole
        ? fc.integer({ min: Math.ceil(from), max: Math.floor(Math.min(500, to)) })
        : number(from, Math.min(500, to));
      // A cell that hides its nought is empty, and an empty one is nought.
      return orBlank(field.words ? fc.oneof(figure, fc.constantFrom(...field.words)) : figure);
    }
    case "moment":
      return orBlank(number(40000, 50000));
    case "choice":
      return fc.constantFrom(...field.choices);
    default:
      return field.kind === "text" && field.offers ? fc.constantFrom(...field.offers) : words;
  }
}

export const ofFields = (fields: Fields, on: On, words: fc.Arbitrary<string>): fc.Arbitrary<object> =>
  fc.record(Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, ofField(field, on, words)])));

function ofField(field: Field, on: On, words: fc.Arbitrary<string>): fc.Arbitrary<unknown> {
  if (field.kind === "group") return ofFields(field.fields, on, words);
  if (field.kind === "list") return fc.array(single(field.each, on, words), { maxLength: Math.min(5, field.longest) });
  if (field.kind !== "table") return single(field, on, words);
  const line = fc.record(
    Object.fromEntries(
      Object.entries(field.columns).map(([key, column]) => {
        // A line without any word or figure is none.
        const cell = single(column, on, column.kind === "text" ? words.map((text) => text || "x") : words);
        return [key, cell];
      }),
    ),
  );
  return fc.array(line, { maxLength: Math.min(4, field.longest) });
}

/** Blocks as a brewer may have filled them in, in any combination. */
export const anyBlocks = (words: fc.Arbitrary<string>, on: On): fc.Arbitrary<Partial<BatchContents>> =>
  fc.record(Object.fromEntries(blocksFor(on.method).map((key) => [key, ofFields(blockFields[key].fields, on, words)])), {
    requiredKeys: [],
  });
