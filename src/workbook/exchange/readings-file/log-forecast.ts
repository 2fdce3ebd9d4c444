import { askTable, column } from "../../batch/figures/ask";
import type { LogRow } from "./read-log";

export interface LogForecast {
  readonly state: string;
  readonly finalGravity: number | undefined;
  readonly finalGravityPlusOrMinus: number | undefined;
  /** Day number. */
  readonly day: number | undefined;
  readonly dayPlusOrMinus: number | undefined;
  readonly percentDone: number | undefined;
}

/** Where the fermentation stands and ends by all rows, asked of GYLE.LOG.FORECAST; undefined where it has no answer. */
export function logForecast(
  rows: readonly LogRow[],
  originalGravity: number | undefined,
  expected: number | undefined,
): LogForecast | undefined {
  if (rows.length === 0) return undefined;
  const answer = askTable(
    "LOG.FORECAST",
    column(rows.map(({ when }) => when)),
    column(rows.map(({ gravity }) => gravity)),
    originalGravity ?? null,
    expected ?? null,
  );
  const at = (row: number, cell: number): number | undefined => {
    const value = answer[row]?.[cell];
    return typeof value === "number" ? value : undefined;
  };
  const state = answer[0]?.[1];
  if (typeof state !== "string") return undefined;
  return {
    state,
    finalGravity: at(1, 1),
    finalGravityPlusOrMinus: at(1, 2),
    day: at(2, 1),
    dayPlusOrMinus: at(2, 2),
    percentDone: at(3, 1),
  };
}
