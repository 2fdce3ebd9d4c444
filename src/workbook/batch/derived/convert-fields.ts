import type { UnitSystem } from "../../../functions/quantities";
import type { Fields } from "../describe/field";
import { converted, rounded, toStep } from "../describe/measures";
import { mapFields } from "./map-fields";

/** The same contents in another unit system, exactly: nothing is rounded. Words stay as they are. */
export const convertFields = <V extends object>(fields: Fields, values: V, from: UnitSystem, to: UnitSystem): V =>
  mapFields(fields, values, (field, value) =>
    field.kind === "number" && typeof value === "number" ? converted(field.measure, value, from, to) : value,
  );

/** Every figure as a home brewery can measure it. */
export const roundFields = <V extends object>(fields: Fields, values: V, units: UnitSystem): V =>
  mapFields(fields, values, (field, value) => {
    if (field.kind !== "number" || typeof value !== "number") return value;
    return field.step === undefined ? rounded(field.measure, value, units) : toStep(value, field.step);
  });

/** What goes into the batch, for another volume of it. */
export const growFields = <V extends object>(fields: Fields, values: V, factor: number): V =>
  mapFields(fields, values, (field, value) =>
    field.kind === "number" && field.grows && typeof value === "number" ? value * factor : value,
  );
