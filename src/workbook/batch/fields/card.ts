import { describeFields, methods } from "../describe/field";

/** 1. Card: what the batch is. */
export const cardFields = describeFields({
  /** Tells this batch from every other, also in files that travel; a copied sheet keeps it. */
  id: {
    kind: "mark",
    since: 2,
    cell: "batch_id",
    label: "Tells this batch from every other:",
    called: "id",
    longest: 40,
    pattern: /^[A-Za-z0-9-]*$/,
  },
  sheetName: { kind: "mark", label: "Name of the sheet", longest: 31 },
  batchName: { kind: "text", cell: "batch_name", label: "Name", called: "name of the batch", longest: 120 },
  number: {
    kind: "number",
    cell: "batch_number",
    label: "Batch number",
    called: "number",
    role: "measured",
    format: "whole",
    limits: [0, 1e6],
    blank: true,
  },
  brewedOn: { kind: "moment", cell: "brewed_on", label: "Brewed on", format: "date" },
  /** Fraction of a day. */
  startTime: {
    kind: "moment",
    cell: "start_time",
    label: "Day begins at",
    called: "start of the day",
    format: "time",
    usual: 10 / 24,
    limits: [0, 1],
  },
  style: { kind: "text", cell: "style", label: "Style aimed at", called: "style", longest: 120 },
  method: { kind: "choice", label: "Method", choices: methods },
  units: {
    kind: "choice",
    cell: "units",
    label: "Units of this sheet",
    called: "units",
    choices: ["metric", "us"],
    note: "Chosen when the sheet was made: every number on it is read in these units. For other units, make a new batch.",
  },
  volume: {
    kind: "number",
    cell: "volume",
    label: "Into the fermenter",
    called: "volume",
    measure: "volume",
    format: "two",
    limits: [0.1, 10000],
    held: true,
  },
});
