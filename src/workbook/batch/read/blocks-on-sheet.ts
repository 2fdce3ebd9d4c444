import type { BatchSheet } from "./batch-sheets";
import { blockFields, blockKeys, type BlockKey } from "../fields/blocks";

/** Blocks that a sheet has, from the top. */
export const blocksOnSheet = (sheet: BatchSheet): readonly BlockKey[] =>
  blockKeys
    .filter((key) => sheet.has(blockFields[key].area))
    .sort((one, other) => sheet.area(blockFields[one].area).from.row - sheet.area(blockFields[other].area).from.row);
