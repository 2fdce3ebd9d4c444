/** Opening and saving .xlsx files, between bytes and the grid's snapshots. */
export { openWorkbook, someOf, type OpenedWorkbook, type OpenOptions } from "./open-workbook";
export { saveWorkbook, type SaveOptions } from "./save-workbook";
export { valuesOnlyCopy } from "./values-only-copy";
export { UnreadableFileError } from "./unreadable-file-error";
export { MAX_PARTS, MAX_UNPACKED_BYTES } from "./package-parts";
export type { Carry } from "./carry";
export {
  cachedValueOf,
  computedAt,
  isCachedError,
  NOTHING_COMPUTED,
  type CachedError,
  type CachedValue,
  type CellErrorText,
  type ComputedSheet,
  type ComputedValues,
  type SpillRange,
} from "./computed-values";
