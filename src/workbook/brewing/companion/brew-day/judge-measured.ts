import type { BatchCell } from "../../../batch/fields/cells";
import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { figureDoubt, outsideLimits } from "../../../batch/derived/figure-doubts";
import { called, type ChoiceField, type NumberField } from "../../../batch/describe/field";
import { madeFor } from "../../../batch/read/batch-contents";
import { newlySaid } from "../../../batch/rules/what-it-says";
import type { Filled, Scale } from "../../../batch/contents";
import { changeCells, type CellChange } from "../change-cells";
import { corrected } from "../reading/corrected";
import { isEmptyOn, type Measurement, type Part } from "./measurements";

/** Figures as typed, by the cell that they are for, and the hydrometer's scale. */
export interface Typed {
  readonly figures: Readonly<Record<string, Filled<number>>>;
  readonly scale: Scale;
}

export interface Judged {
  /** What would be written; empty while nothing is complete. */
  readonly changes: readonly CellChange[];
  /** The corrected gravity, where a hydrometer was read. */
  readonly gravity: number | undefined;
  /** Why it cannot be written like this; "" where nothing is wrong. */
  readonly problem: string;
  /** Why it is hard to believe; it is asked about, and may be true all the same. */
  readonly doubts: readonly string[];
}

/** Holds figures against their descriptions and against the sheet's checks, before anything is written. */
export function judgeMeasured(sheet: BatchSheet, { parts, judgedBy }: Measurement, typed: Typed): Judged {
  const on = madeFor(sheet);
  const judged = parts.map((part) => judgePart(sheet, part, typed, judgedBy));
  const changes = judged.flatMap((one) => one.changes);
  const figures = parts.flatMap(({ main, beside }) => [main, ...(beside ? [beside] : [])]).flatMap((field) => figureOf(field, typed));
  const outside = figures.map(({ field, value }) => outsideLimits(field, value, on)).find((words) => words !== undefined);
  const problem = outside ?? judged.map((one) => one.problem).find((words) => words !== "") ?? "";
  const doubts = figures.map(({ field, value }) => figureDoubt(field, value, on)).filter((words) => words !== undefined);
  return {
    changes,
    gravity: judged.find(({ gravity }) => gravity !== undefined)?.gravity,
    problem,
    doubts: problem === "" && changes.length > 0 ? [...doubts, ...newlySaid(sheet, changes, judgedBy).map(({ words }) => words)] : [],
  };
}

const figureOf = (field: NumberField, { figures }: Typed): { readonly field: NumberField; readonly value: number }[] => {
  const value = figures[field.cell ?? ""] ?? "";
  return value === "" ? [] : [{ field, value }];
};

const nothing = { changes: [] as readonly CellChange[], gravity: undefined as number | undefined, problem: "" };

function judgePart(sheet: BatchSheet, { main, beside, scale }: Part, typed: Typed, judgedBy: readonly string[]): typeof nothing {
  const [value] = figureOf(main, typed);
  const [warmth] = beside && isEmptyOn(sheet, beside) ? figureOf(beside, typed) : [];
  if (!value) return warmth ? { ...nothing, problem: `The ${called(main)} is missing.` } : nothing;
  const changes = [value, ...(warmth ? [warmth] : [])].map(({ field, value: content }) => change(field, content));
  if (!scale) return value.value > 0 ? { ...nothing, changes } : { ...nothing, problem: `The ${called(main)} must be above 0.` };
  const sampleTemperature = warmth?.value ?? (beside?.cell === undefined ? "" : sheet.number(beside.cell as BatchCell));
  if (sampleTemperature === "") return { ...nothing, problem: "How warm was the sample? Without it the reading cannot be corrected." };
  const measured = { instrument: "hydrometer", reading: value.value, scale: typed.scale, sampleTemperature, originalBrix: "" } as const;
  const { ready, problem } = corrected(sheet, measured, "wort");
  const all = [...changes, change(scale, typed.scale)];
  // The sheet knows the usual slips, such as points for a gravity, and says what to write instead.
  if (!ready) return { ...nothing, problem: newlySaid(sheet, all, judgedBy)[0]?.words ?? problem };
  return { changes: all, gravity: ready.gravity, problem: "" };
}

const change = (field: NumberField | ChoiceField, content: number | string): CellChange => ({
  name: field.cell as BatchCell,
  label: `the ${called(field)}`,
  content,
});

/** Writes what was measured, all of it or nothing; a cell that somebody has filled meanwhile is never written over. */
export const writeMeasured = (context: Excel.RequestContext, seen: BatchSheet, { changes }: Judged): Promise<void> =>
  changeCells(context, seen, changes);
