import type { FermentationFit } from "./fit";
import { asList, dayWithin, gravityOnDay, steepestFallPerDay } from "./logistic";

/** One line of most hydrometers: nearer than this the beer is there. */
const oneLine = 0.001;

export interface Forecast {
  readonly finalGravity: number;
  /** 95 %; undefined where the end was held. */
  readonly finalGravityPlusOrMinus: number | undefined;
  /** Day on which the curve comes within 0.001 of its end. */
  readonly day: number;
  readonly dayPlusOrMinus: number;
  readonly steepestFallPerDay: number;
  /** Of the whole fall, on the day given. */
  readonly shareDone: number;
}

/**
 * Where a fitted fermentation ends and when it gets there.
 *
 * @param newestDay day of the newest reading
 */
export function forecastOf(fit: FermentationFit, newestDay: number): Forecast {
  const { curve } = fit;
  const day = dayWithin(curve, oneLine);
  return {
    finalGravity: curve.lowerGravity,
    finalGravityPlusOrMinus: fit.ends === "held" ? undefined : fit.plusOrMinus([0, 1, 0, 0]),
    day,
    dayPlusOrMinus: fit.plusOrMinus(slopesOfDay(asList(curve))),
    steepestFallPerDay: steepestFallPerDay(curve),
    shareDone: (curve.upperGravity - gravityOnDay(curve, newestDay)) / (curve.upperGravity - curve.lowerGravity),
  };
}

/** Slopes of M + ln((upper − lower)/line − 1)/B against the four numbers. */
function slopesOfDay([upper = 0, lower = 0, steepness = 1]: readonly number[]): number[] {
  const beyond = upper - lower - oneLine;
  return [1 / (steepness * beyond), -1 / (steepness * beyond), -Math.log(beyond / oneLine) / steepness ** 2, 1];
}
