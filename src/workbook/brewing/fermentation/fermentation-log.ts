import type { BatchCell } from "../../batch/fields/cells";
import { unitsOf, type BatchSheet } from "../../batch/read/batch-sheets";
import type { UnitSystem } from "../../../functions/quantities";

export interface Mark {
  /** Excel day number with the time of day. */
  readonly day: number;
  readonly value: number;
}

/** What a batch sheet holds of its fermentation, as plain data. */
export interface FermentationLog {
  readonly sheetName: string;
  readonly batchName: string;
  readonly units: UnitSystem;
  /** When the yeast went in, as near as the sheet tells: on older sheets the brew day's begin. */
  readonly start: number | undefined;
  /** What was read, the original gravity first where it was; in the order of time. */
  readonly gravities: readonly Mark[];
  readonly temperatures: readonly Mark[];
  readonly originalGravity: number | undefined;
  readonly expectedGravity: number | undefined;
  /** In the words of the sheet; "" where there is no reading yet. */
  readonly verdict: string;
  /** The readings that "steady" or "stalled" rest on, in words; "" on sheets that do not tell. */
  readonly verdictRests: string;
  /** Readings before it say nothing about rest. */
  readonly countFrom: number | undefined;
  readonly nextStep: string;
  readonly nextReading: number | undefined;
}

/** @throws MissingName where a named cell of the sheet was deleted */
export function fermentationLog(sheet: BatchSheet): FermentationLog {
  const number = (name: BatchCell): number | undefined => {
    const value = sheet.number(name);
    return value === "" ? undefined : value;
  };
  const column = (name: BatchCell) => sheet.block(name).map(([value = ""]) => value);
  const times = column("reading_times");
  const marks = (values: readonly unknown[]): Mark[] =>
    values
      .flatMap((value, row) => {
        const day = times[row];
        return typeof day === "number" && day > 0 && typeof value === "number" ? [{ day, value }] : [];
      })
      .sort((one, other) => one.day - other.day);
  const brewed = number("brewed_on");
  const pitched = sheet.knownNumber("pitched_at");
  const start = pitched ?? (brewed === undefined ? undefined : brewed + (number("start_time") ?? 0));
  const originalGravity = number("og");
  const first =
    start !== undefined && originalGravity !== undefined && number("og_reached") !== undefined
      ? [{ day: start, value: originalGravity }]
      : [];
  return {
    sheetName: sheet.sheetName,
    batchName: sheet.text("batch_name"),
    units: unitsOf(sheet),
    start,
    gravities: [...first, ...marks(column("gravities"))],
    temperatures: marks(column("beer_temperatures")),
    originalGravity,
    expectedGravity: number("fg_expected"),
    verdict: sheet.text("verdict"),
    verdictRests: sheet.knownText("verdict_rests"),
    // Hops that are only planned leave the course up to them as it is.
    countFrom: sheet.knownNumber("dry_hopped_on") ? sheet.knownNumber("count_from") : undefined,
    nextStep: sheet.text("next_step"),
    nextReading: number("next_reading"),
  };
}
