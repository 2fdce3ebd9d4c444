import { usualValues } from "../../src/workbook/batch/derived/usual-values";
import { tastingFields } from "../../src/workbook/batch/fields/tasting";

/** Nobody has tasted it yet. */
export const emptyTasting = usualValues(tastingFields, { units: "metric", method: "extract" });
