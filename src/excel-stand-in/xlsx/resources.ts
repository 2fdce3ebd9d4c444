import type { IWorkbookData } from "@univerjs/core";

/** Where the grid's plugins keep their data in a snapshot: one JSON text each, mostly by sheet id. */
export const RESOURCE = {
  conditionalFormats: "SHEET_CONDITIONAL_FORMATTING_PLUGIN",
  dataValidation: "SHEET_DATA_VALIDATION_PLUGIN",
  tables: "SHEET_TABLE_PLUGIN",
  notes: "SHEET_NOTE_PLUGIN",
  names: "SHEET_DEFINED_NAME_PLUGIN",
} as const;

export function readResource<Data extends object>(snapshot: IWorkbookData, name: string): Data | undefined {
  const text = snapshot.resources?.find((resource) => resource.name === name)?.data;
  return text ? (JSON.parse(text) as Data) : undefined;
}

export const makeResource = (name: string, data: object): { id: string; name: string; data: string } => ({
  id: name,
  name,
  data: JSON.stringify(data),
});
