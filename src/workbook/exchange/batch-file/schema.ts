import * as z from "zod";
import type { UnitSystem } from "../../../functions/quantities";
import type { BatchContents } from "../../batch/contents";
import { dayLimits } from "../../batch/describe/day-limits";
import {
  forSheet,
  type Column,
  type Field,
  type Fields,
  type Limits,
  type MomentField,
  type NumberField,
  type On,
  type Single,
  type Table,
} from "../../batch/describe/field";
import { batchFields } from "../../batch/fields";

/** Formulas of a step are looked at afterwards, name by name. */
const longestFormula = 400;

/** Words as a cell holds them; one that a spreadsheet would take for a formula is written with an apostrophe in front (see `file-texts.ts`). */
const text = (longest: number) =>
  z
    .string()
    .max(longest)

    .refine((value) => !/[\u0000-\u0009\u000b-\u001f\u007f]/.test(value), { error: "holds characters that no cell shows" })
    .refine((value) => !/^[=+\-@]/.test(value), { error: "begins like a formula, and words are expected there" });
/** JSON can say -0, which no cell shows. */
const between = ([min, max]: readonly [number, number]) =>
  z
    .number()
    .min(min)
    .max(max)
    .overwrite((value) => value + 0);

/** Nothing but what is described, within the limits of the sheet: what a file brings, a brewer could have typed. */
export const schemaOf = (fields: Fields, on: On): z.ZodType =>
  z.strictObject(Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, schemaFor(field, on)])));

function schemaFor(field: Field | Column, on: On): z.ZodType {
  switch (field.kind) {
    case "group": {
      const group = schemaOf(field.fields, on);
      return field.optional ? group.optional() : group;
    }
    case "table": {
      const lines = z.array(lineSchema(field, on)).max(field.longest);
      return field.optional ? lines.optional() : lines;
    }
    case "list":
      return z.array(schemaFor(field.each, on)).max(field.longest);
    default:
      return singleSchema(field, on);
  }
}

const lineSchema = ({ columns }: Table, on: On): z.ZodType =>
  z.strictObject(Object.fromEntries(Object.entries(columns).map(([key, column]) => [key, schemaFor(column, on)])));

function singleSchema(field: Single | Column, on: On): z.ZodType {
  switch (field.kind) {
    case "number": {
      const limits = forSheet(field.limits, on);
      const number = field.whole ? z.int().min(limits[0]).max(limits[1]) : between(limits);
      return orEmpty(field, limits, field.words ? z.union([z.enum(field.words), number]) : number);
    }
    case "moment": {
      const limits = field.limits ?? dayLimits;
      return orEmpty(field, limits, between(limits));
    }
    case "choice":
      return z.enum(field.choices);
    case "text":
      return field.optional ? text(field.longest).optional() : text(field.longest);
    case "mark":
      return field.pattern ? z.string().max(field.longest).regex(field.pattern) : z.string().max(field.longest);
    case "formula": {
      const cell = z.union([z.string().max(longestFormula).startsWith("="), text(field.longest)]);
      return field.numbers ? z.union([between(field.numbers), cell]) : cell;
    }
  }
}

/** Where a cell may be blank, so may it here; one that must not be and was emptied says 0. */
function orEmpty(field: NumberField | MomentField | Column, [from]: Limits, schema: z.ZodType): z.ZodType {
  if ("blank" in field && field.blank) return z.union([z.literal(""), schema]);
  return from <= 0 || ("needed" in field && field.needed) ? schema : z.union([between([0, 0]), schema]);
}

const ofUnits = (units: UnitSystem) => schemaOf(batchFields, { units, method: "all-grain" }) as z.ZodType<BatchContents>;
const schemas = { metric: ofUnits("metric"), us: ofUnits("us") };

/** A batch of today's version, checked to the last entry. */
export const checkedBatch = (batch: unknown): z.ZodSafeParseResult<BatchContents> =>
  schemas[typeof batch === "object" && batch !== null && "units" in batch && batch.units === "us" ? "us" : "metric"].safeParse(batch);
