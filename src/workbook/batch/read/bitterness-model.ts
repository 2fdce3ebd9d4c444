import type { BatchSheet } from "./batch-sheets";

/** The model that a sheet's bitterness goes by: the one chosen on it, where it has a cell for that. */
export const bitternessModel = (sheet: BatchSheet): string => (sheet.has("bitterness_model") ? sheet.text("bitterness_model") : "tinseth");
