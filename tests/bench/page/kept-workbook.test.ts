import type { IWorkbookData } from "@univerjs/core";
import { expect, test } from "vitest";
import { DamagedWorkbookError, fromRecord, generationOf, toRecord } from "../../../src/bench/page/keep/kept-workbook";

const snapshot = {
  id: "w",
  sheetOrder: ["s"],
  sheets: { s: { id: "s", name: "Batch 1", cellData: { 0: { 0: { v: 1.05 } } } } },
} as unknown as IWorkbookData;
const now = new Date("2026-03-01T14:03:00Z");
const record = toRecord({ name: "Pale", snapshot, carry: { bytes: new Uint8Array([1, 2]), sheetIds: ["s"] } }, 7, now);

test("what was kept comes back whole", () => {
  const back = fromRecord(structuredClone(record));
  expect(back).toEqual({ name: "Pale", snapshot, carry: { bytes: new Uint8Array([1, 2]), sheetIds: ["s"] }, generation: 7, savedAt: now });
});

test.each([
  ["a text cut short", { ...record, text: record.text.slice(0, -5) }],
  ["a text that is none", { ...record, text: "{", length: 1 }],
  ["a sheet gone", { ...record, ...textOf({ ...snapshot, sheets: {} }) }],
  ["no sheets at all", { ...record, ...textOf({ ...snapshot, sheetOrder: [] }) }],
  ["a field gone", { ...record, savedAt: undefined }],
  ["another format", { ...record, format: 2 }],
  ["something else", "nonsense"],
])("%s is noticed as damage", (_, damaged) => {
  expect(() => fromRecord(damaged)).toThrow(DamagedWorkbookError);
});

test("a damaged record still tells its age, if it can", () => {
  expect(generationOf({ ...record, text: "" })).toBe(7);
  expect(generationOf(undefined)).toBe(0);
  expect(generationOf({ generation: NaN })).toBe(0);
});

function textOf(state: unknown): { text: string; length: number } {
  const text = JSON.stringify(state);
  return { text, length: text.length };
}
