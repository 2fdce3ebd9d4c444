import type { Field, Fields, Single, Value, Values } from "../describe/field";

/** The same contents with `change` made to every single figure and word, in groups and tables too; what is left out stays so. */
export function mapFields<V extends object>(fields: Fields, values: V, change: (field: Single, value: Value) => Value): V {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]: [string, Value]) => [key, mapped(fields[key], value, change)]),
  ) as unknown as V;
}

function mapped(field: Field | undefined, value: Value, change: (field: Single, value: Value) => Value): Value {
  if (field === undefined || value === undefined) return value;
  switch (field.kind) {
    case "group":
      return mapFields(field.fields, value as Values, change);
    case "table":
      return (value as readonly Values[]).map((line) => mapFields(field.columns, line, change));
    case "list":
      return (value as readonly Value[]).map((one) => change(field.each, one));
    default:
      return change(field, value);
  }
}
