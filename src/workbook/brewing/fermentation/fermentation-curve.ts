import { call, type Answer } from "../../../functions/call";
import { CellError } from "../../../functions/cell-error";
import { argumentName } from "../../../functions/describe";
import { logCurve } from "../../../functions/log/curve";
import { logForecast } from "../../../functions/log/forecast";
import { daysAhead, leastDays } from "../../batch/sheet/fermentation-chart";
import { sentenceOf } from "../../grid/words/sentence";
import type { FermentationLog } from "./fermentation-log";

export interface CurvePoint {
  readonly day: number;
  readonly gravity: number;
  readonly low: number;
  readonly high: number;
}

export interface Course {
  /** Empty where the log is too short, or cannot be followed. */
  readonly curve: readonly CurvePoint[];
  /** Why there is no curve. */
  readonly reason?: string;
  /** Only of a fermentation under way: never out of a stall, and nothing is left to forecast of a steady one; none after dry hops. */
  readonly forecast?: {
    readonly day: number;
    readonly plusOrMinusDays: number;
    readonly finalGravity: number;
    readonly plusOrMinusGravity: number;
  };
}

const points = 49;

/** The span of days that a chart of the log shows: as in the sheet. */
export function shownDays({ start, gravities, temperatures }: FermentationLog): readonly [from: number, to: number] | undefined {
  const days = [...gravities, ...temperatures].map(({ day }) => day);
  const from = start ?? Math.min(...days);
  return Number.isFinite(from) ? [Math.min(from, ...days), Math.max(from + leastDays, ...days.map((day) => day + daysAhead))] : undefined;
}

/** The fitted curve of a log with its band, and when it should be at its end, by the worksheet's own functions. */
export function courseOf(log: FermentationLog): Course {
  const span = shownDays(log);
  if (log.gravities.length < 2 || !span) return { curve: [], reason: "Two readings after the yeast went in are needed for a curve." };
  const days = Array.from({ length: points }, (_, index) => span[0] + ((span[1] - span[0]) * index) / (points - 1));
  const known = [log.gravities.map(({ day }) => [day]), log.gravities.map(({ value }) => [value])];
  const ends = [log.originalGravity ?? null, log.expectedGravity ?? null, log.countFrom ?? null];
  const curve = call(logCurve, [...known, days.map((day) => [day]), ...ends]);
  const problem = curve[0]?.[0];
  if (problem instanceof CellError)
    return { curve: [], reason: sentenceOf(problem.message, Object.keys(logCurve.parameters).map(argumentName)) };
  // Readings from before the dry hops tell nothing of what the hops wake up.
  const forecast = log.countFrom !== undefined ? undefined : forecastIn(log.verdict, call(logForecast, [...known, ...ends]));
  return {
    curve: curve.map(([gravity, low, high], index) => ({
      day: days[index] ?? 0,
      gravity: Number(gravity),
      low: Number(low),
      high: Number(high),
    })),
    ...(forecast && { forecast }),
  };
}

function forecastIn(verdict: string, rows: Answer): Course["forecast"] {
  if (verdict !== "working" && verdict !== "nearly") return undefined;
  const [, gravity, day] = rows;
  if (typeof day?.[1] !== "number" || typeof gravity?.[1] !== "number") return undefined;
  return { day: day[1], plusOrMinusDays: Number(day[2]), finalGravity: gravity[1], plusOrMinusGravity: Number(gravity[2]) };
}
