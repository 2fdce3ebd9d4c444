import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { hopWords, ownLines } from "../../../../functions/day/timeline-words";
import type { CellValue } from "../../../grid/read/named-cells";
import { boilBeginsWhy, flameOutWhy, hopWhy, standWhy } from "./line-words";

export type LineKind = "step" | "hop" | "boil begins" | "flame out" | "stand" | "done";

/** One line of the brew day as the sheet tells it. */
export interface DayLine {
  /** From 0, as in the names timeline and happened. */
  readonly row: number;
  readonly kind: LineKind;
  readonly what: string;
  readonly amount: string;
  readonly caution: string;
  /** "" where the teacher left it blank. */
  readonly why: string;
  /** Day number. */
  readonly planned: number;
  /** Minutes into the boil; undefined before and after it. */
  readonly boilMinute: number | undefined;
  /** What stands in the cell for the real time: "" while the line is still to come. */
  readonly happened: CellValue;
}

/** A line with its times as instants, at the moment that is looked at. */
export interface TimedLine extends DayLine {
  /** The real time; undefined while to come, or where the cell holds words. */
  readonly doneAt: number | undefined;
  /** Something stands in its cell. */
  readonly isDone: boolean;
  /** When it is due as things go; where it is done, when it was. */
  readonly dueAt: number;
}

/** The lines in their order; none while the clock cannot be made (no date, an error in a step). What is for another day has no time and is none. */
export function dayLines(sheet: BatchSheet): DayLine[] {
  const happened = sheet.block("happened");
  const rows = sheet.block("timeline").filter(([time, , what]) => typeof time === "number" && what !== "");
  const nameOf = kinds(sheet, rows);
  return rows.map(([planned = 0, boilMinute = "", what = "", amount = "", caution = ""], row) => ({
    row,
    ...nameOf(row),
    what: String(what),
    amount: String(amount),
    caution: String(caution),
    planned: Number(planned),
    boilMinute: typeof boilMinute === "number" ? boilMinute : undefined,
    happened: happened[row]?.[0] ?? "",
  }));
}

/**
 * Which line came from where, and the why that belongs to it: a step brings its teacher's words. Two steps may bear the
 * same name, so each is used once, in the order of the table.
 */
function kinds(sheet: BatchSheet, rows: readonly CellValue[][]): (row: number) => Pick<DayLine, "kind" | "why"> {
  const steps = sheet.block("steps").filter(([what]) => what !== "");
  const hops = sheet.block("hop_plan").map(([hop = "", , , minutes = ""]) => {
    const added = typeof minutes === "string" ? minutes.trim().toLowerCase() : minutes === true || minutes === false ? "" : minutes;
    return { what: hopWords(String(hop), added), why: hopWhy(added) };
  });
  const found = rows.map(([, , what]): Pick<DayLine, "kind" | "why"> => {
    const said = String(what);
    if (said.startsWith(ownLines["boil begins"])) return { kind: "boil begins", why: boilBeginsWhy };
    const step = steps.findIndex(([name]) => name === what);
    if (step >= 0) return { kind: "step", why: String(steps.splice(step, 1)[0]?.[4] ?? "") };
    const hop = hops.find((candidate) => candidate.what === said);
    if (hop) return { kind: "hop", why: hop.why };
    if (said.startsWith(ownLines.stand)) return { kind: "stand", why: standWhy };
    return said === ownLines.done ? { kind: "done", why: "" } : { kind: "flame out", why: flameOutWhy };
  });
  return (row) => found[row] ?? { kind: "step", why: "" };
}
