import { unpack, type PackageParts } from "./package-parts";
import { alignNames } from "./whole-package";
import { readLayout, type SheetEntry, type WorkbookLayout } from "./workbook-layout";

/**
 * What an opened file brings along for the next save: the file itself, and which of the snapshot's sheets were in it.
 * Plain data, so that it can be stored beside the snapshot. Everything the grid does not model is taken from here:
 * pictures and shapes, unchanged charts, pivot tables, column filters, grouping, sparklines, other conditional formats,
 * theme colours, formatted text inside a cell, links, passwords of protected sheets.
 */
export interface Carry {
  bytes: Uint8Array;
  /** The ids of the sheets in the file's order. */
  sheetIds: string[];
}

/** The opened file behind a snapshot, taken apart again. */
export interface CarriedFile {
  parts: PackageParts;
  layout: WorkbookLayout;
  /** The file's sheets by their id in the snapshot. */
  entries: Map<string, SheetEntry>;
  /** The id of the sheet that had a name when the file was opened. */
  sheetIdOf(name: string): string | undefined;
}

export function takeApart(carry: Carry): CarriedFile {
  const parts = unpack(carry.bytes);
  alignNames(parts);
  const layout = readLayout(parts);
  const entries = new Map<string, SheetEntry>();
  carry.sheetIds.forEach((id, index) => {
    if (layout.sheets[index]) entries.set(id, layout.sheets[index]);
  });
  const sheetIdOf = (name: string): string | undefined =>
    [...entries].find(([, entry]) => entry.name.toLowerCase() === name.toLowerCase())?.[0];
  return { parts, layout, entries, sheetIdOf };
}
