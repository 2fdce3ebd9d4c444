import type { IWorkbookData } from "@univerjs/core";
import * as z from "zod/mini";
import type { Carry } from "../../../excel-stand-in/xlsx";

/** What an open workbook consists of, apart from the grid that shows it. */
export interface WorkbookState {
  name: string;
  snapshot: IWorkbookData;
  /** What the opened file had beyond the snapshot, for saving it again. */
  carry?: Carry | undefined;
  /** The id of the sheet in front; the snapshot does not tell. */
  sheetInFront?: string | undefined;
}

/** One generation as it lies in the browser's storage. The text's length is there to notice a text cut short. */
export interface KeptRecord {
  format: 1;
  /** Counts up with each writing: the higher one is the newer. */
  generation: number;
  savedAt: string;
  name: string;
  text: string;
  length: number;
  carry?: Carry | undefined;
  sheetInFront?: string | undefined;
}

const recordShape = z.object({
  format: z.literal(1),
  generation: z.number(),
  savedAt: z.string(),
  name: z.string(),
  text: z.string(),
  length: z.number(),
  carry: z.optional(z.object({ bytes: z.instanceof(Uint8Array), sheetIds: z.array(z.string()) })),
  sheetInFront: z.optional(z.string()),
});

/** As much of a snapshot as must be right for the grid to open it at all. */
const snapshotShape = z.looseObject({
  sheetOrder: z.array(z.string()).check(z.minLength(1)),
  sheets: z.record(z.string(), z.looseObject({ id: z.string(), name: z.string() })),
});

export class DamagedWorkbookError extends Error {}

export function toRecord({ name, snapshot, carry, sheetInFront }: WorkbookState, generation: number, now: Date): KeptRecord {
  const text = JSON.stringify(snapshot);
  return { format: 1, generation, savedAt: now.toISOString(), name, text, length: text.length, carry, sheetInFront };
}

/** @throws DamagedWorkbookError when the record is not a whole workbook. */
export function fromRecord(raw: unknown): WorkbookState & { generation: number; savedAt: Date } {
  const record = recordShape.safeParse(raw);
  if (!record.success) throw new DamagedWorkbookError("parts of the record are missing");
  const { generation, savedAt, name, text, length, carry, sheetInFront } = record.data;
  if (text.length !== length) throw new DamagedWorkbookError(`${text.length} of ${length} characters are there`);
  const snapshot = readSnapshot(text);
  return { generation, savedAt: new Date(savedAt), name, snapshot, carry, sheetInFront };
}

function readSnapshot(text: string): IWorkbookData {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    throw new DamagedWorkbookError("the text cannot be read");
  }
  const snapshot = snapshotShape.safeParse(parsed);
  if (!snapshot.success || !snapshot.data.sheetOrder.every((id) => id in snapshot.data.sheets))
    throw new DamagedWorkbookError("a sheet is missing");
  return snapshot.data as unknown as IWorkbookData;
}

/** The number of a record that may be damaged; a lost number counts as the oldest. */
export function generationOf(raw: unknown): number {
  const generation = (raw as Partial<KeptRecord> | null | undefined)?.generation;
  return typeof generation === "number" && Number.isFinite(generation) ? generation : 0;
}
