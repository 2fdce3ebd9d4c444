import { gravityOnDay, type FermentationCurve } from "../../src/core/log/richards";
import type { Reading } from "../../src/core/log/readings";

/** An everyday fermentation: 1.050 to 1.010 by a symmetric logistic, half way after 2.2 days. */
export const ale: FermentationCurve = { upperGravity: 1.05, lowerGravity: 1.01, steepnessPerDay: 0.4, halfDay: 2.2, shape: 1 };

/** The readings that a curve gives on these days, each off by its error. */
export const logOf = (curve: FermentationCurve, days: readonly number[], errors: readonly number[] = []): Reading[] =>
  days.map((day, index) => ({ day, gravity: gravityOnDay(curve, day) + (errors[index] ?? 0) }));
