import type { Fields, On, Value, Values } from "../describe/field";
import { mapFields } from "./map-fields";
import { usualValue } from "./usual-values";

/** The plan alone: what was measured, tasted and noted is as in a new batch. */
export function withoutMeasured<V extends object>(fields: Fields, values: V, on: On): V {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]: [string, Value]) => {
      const field = fields[key];
      if (field === undefined || value === undefined) return [key, value];
      if (field.kind === "group") return [key, withoutMeasured(field.fields, value as Values, on)];
      return [key, field.role === "measured" ? usualValue(field, on) : value];
    }),
  ) as unknown as V;
}

export const withoutPrices = <V extends object>(fields: Fields, values: V): V =>
  mapFields(fields, values, (field, value) => (field.role === "price" ? "" : value));
