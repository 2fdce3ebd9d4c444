import { almostADay } from "../../../core/log/steady";

/** What is known of a beer whose verdict is "working". */
interface UnderWay {
  readonly verdict: string;
  readonly gravity: number | undefined;
  readonly originalGravity: number | undefined;
  readonly lastReading: number | undefined;
  readonly countFrom: number | undefined;
}

/** Nearer to the original gravity than this nothing has fallen yet: a line, and the rounding of binary fractions. */
const nothingFallen = 0.001 + 1e-9;

/**
 * "working" also covers a log that cannot tell yet: a single reading at the original gravity, and readings from before the
 * dry hops. What to call those; undefined where the gravity is falling indeed.
 */
export function notTellingYet({ verdict, gravity, originalGravity, lastReading, countFrom }: UnderWay): string | undefined {
  if (verdict !== "working") return undefined;
  if (gravity !== undefined && originalGravity !== undefined && gravity >= originalGravity - nothingFallen)
    return "Not falling yet, by the newest reading.";
  if (countFrom === undefined) return undefined;
  return lastReading !== undefined && lastReading < countFrom + almostADay
    ? "Waiting: no reading since the dry hops counts yet; those a day or more after them do."
    : "After the dry hops: two readings that count, a day apart, are still wanted.";
}
