import type { Field, Fields, On, Value, Values } from "../describe/field";
import type { PlanVersion } from "../describe/plan-version";
import { isOptional, usualValue } from "./usual-values";

/** Contents from a file of an older plan, with what this one brought as in a new batch. What is not as it should be stays so, for the schema to name. */
export function filledUp(fields: Fields, values: Values, version: PlanVersion, on: On): Values {
  return {
    ...values,
    ...Object.fromEntries(
      Object.entries(fields).flatMap(([key, field]): [string, Value][] => {
        const value = values[key];
        if (field.kind === "group" && isValues(value)) return [[key, filledUp(field.fields, value, version, on)]];
        return value === undefined && !isOptional(field) && sinceOf(field) === version ? [[key, usualValue(field, on)]] : [];
      }),
    ),
  };
}

const isValues = (value: Value): value is Values => typeof value === "object" && !Array.isArray(value) && value !== null;
const sinceOf = (field: Field): PlanVersion => ("since" in field && field.since) || 1;

/** Cells that a plan brought to every sheet: what a brewer chooses is no lack where it is not there. */
export const cellsSince = (fields: Fields, version: PlanVersion): string[] =>
  Object.values(fields).flatMap((field) => {
    if (field.kind === "group") return isOptional(field) ? [] : cellsSince(field.fields, version);
    return field.kind !== "table" && field.cell !== undefined && sinceOf(field) === version ? [field.cell] : [];
  });
