import { forSheet, type Field, type Fields, type On, type Value, type ValuesOf } from "../describe/field";

/** Contents that nobody has typed yet: usual values where there are any, else blank. */
export function usualValues<F extends Fields>(fields: F, on: On): ValuesOf<F> {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([key, field]) => (isOptional(field) ? [] : [[key, usualValue(field, on)]])),
  ) as unknown as ValuesOf<F>;
}

/** Left out of a batch unless somebody asks for it. */
export const isOptional = (field: Field): boolean => (field.kind === "table" || field.kind === "group") && field.optional === true;

export function usualValue(field: Field, on: On): Value {
  switch (field.kind) {
    case "group":
      return usualValues(field.fields, on);
    case "table":
    case "list":
      return [];
    case "number":
    case "moment":
      return field.usual === undefined ? (field.blank ? "" : 0) : forSheet(field.usual, on);
    case "choice":
      return field.usual ?? field.choices[0];
    case "text":
      return field.usual ?? "";
    default:
      return "";
  }
}
