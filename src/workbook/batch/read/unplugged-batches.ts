import type { BatchMark } from "./batch-marks";

/** An unplugged batch sheet, which nothing counts, learns from, draws for or writes to. */
export interface UnpluggedBatch {
  readonly sheetName: string;
  /** The batch sheet of this workbook that it is a copy of. */
  readonly original: string | undefined;
}

/** Unplugged sheets, each with the plugged one that carries its mark. Sheets of the first plan have no mark. */
export function unpluggedBatches(unplugged: readonly BatchMark[], plugged: readonly BatchMark[]): UnpluggedBatch[] {
  return unplugged.map(({ sheetName, id }) => ({
    sheetName,
    original: id === "" ? undefined : plugged.find((batch) => batch.id === id)?.sheetName,
  }));
}

/**
 * Why a sheet is skipped, in words for the brewer.
 *
 * @param to what plugging it back in would allow: "count it in the season"
 */
export const passedOver = ({ sheetName, original }: UnpluggedBatch, to: string): string =>
  original === undefined ? unpluggedWords(sheetName, to) : `“${sheetName}” is an unplugged copy of “${original}” and is skipped.`;

export const unpluggedWords = (sheetName: string, to: string): string =>
  `“${sheetName}” is unplugged; plug it back in to ${to} (Share, Unplug).`;
