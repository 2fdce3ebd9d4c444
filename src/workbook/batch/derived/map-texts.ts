import type { Fields } from "../describe/field";
import { mapFields } from "./map-fields";

/**
 * Every text that somebody typed goes through `change`; choices from a list, dates and numbers stay. Formulas (what begins with
 * "=" where one may stand) are handed to `formula`, which leaves them as they are unless it is given.
 */
export const mapTexts = <V extends object>(
  fields: Fields,
  values: V,
  change: (text: string) => string,
  formula: (text: string) => string = (text) => text,
): V =>
  mapFields(fields, values, (field, value) => {
    if (typeof value !== "string") return value;
    if (field.kind === "text") return change(value);
    return field.kind === "formula" ? (value.startsWith("=") ? formula(value) : change(value)) : value;
  });
