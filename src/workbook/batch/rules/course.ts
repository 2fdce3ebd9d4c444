import { gravityLimits } from "../../../core/wort/gravity-limits";
import type { ReadingRows } from "../sheet/readings";
import { rule, silent, type CheckLine } from "./rule";
import { anyError, anyWords } from "./words";

/** Rules that a single reading breaks, whatever the others are: Check names its cell. */
export const ofOneReading: ReadonlySet<string> = new Set([
  "course.error",
  "course.time-text",
  "course.reading-text",
  "course.plato-as-gravity",
  "course.points-as-gravity",
  "course.no-decimal-sign",
  "course.gravity-as-plato",
  "course.undated",
  "course.no-temperature",
  "course.before-brew-day",
  "course.uncorrected",
]);

/** Rules about the newest reading, whatever stood there before it. */
export const ofTheNewest: ReadonlySet<string> = new Set(["course.rising", "course.above-original"]);

/** Readings that count for nothing, or for the wrong day, before what they say is judged. */
export function courseLine({ first, last }: ReadingRows): CheckLine {
  const scales = `C${first}:C${last}`;
  return {
    id: "course",
    label: "Course of the gravity",
    weight: "look",
    steps: [
      rule("error", "SUMPRODUCT(ISERROR(reading_times)+ISERROR(readings))>0", "A reading or its date shows an error:", "type it again."),
      rule(
        "time-text",
        anyWords("reading_times"),
        "The date of a reading is a text, so the reading counts for nothing.",
        "Type it such as 2026-09-08 18:30.",
      ),
      rule(
        "reading-text",
        anyWords("readings"),
        "A reading is a text, not a number.",
        "Type the number alone, with the decimal sign of your Excel.",
      ),
      rule(
        "plato-as-gravity",
        `COUNTIFS(${scales},"<>P",readings,">"&${gravityLimits.atMost},readings,"<=40")>0`,
        "A reading is no specific gravity.",
        "Degrees Plato want the scale P; of points, 12 are written 1.012.",
      ),
      rule(
        "points-as-gravity",
        `COUNTIFS(${scales},"<>P",readings,">40",readings,"<900")>0`,
        "A reading is no gravity:",
        "write 1.012 for 12 points.",
      ),
      rule(
        "no-decimal-sign",
        `COUNTIFS(${scales},"<>P",readings,">=900")>0`,
        "A reading has no decimal sign:",
        "write 1.012 instead of 1012.",
      ),
      rule(
        "gravity-as-plato",
        `COUNTIFS(${scales},"P",readings,">="&0.97,readings,"<="&${gravityLimits.atMost})>0`,
        "A reading of about 1 °P looks like specific gravity:",
        "set its scale to SG.",
      ),
      rule(
        "undated",
        "COUNT(readings)>SUMPRODUCT(ISNUMBER(readings)*ISNUMBER(reading_times))",
        "A reading has no date and time, so it counts for nothing.",
      ),
      rule(
        "no-temperature",
        `SUMPRODUCT(ISNUMBER(readings)*(D${first}:D${last}=""))>0`,
        "A reading has no temperature of its sample, so it counts for nothing.",
        "Type how warm the sample was (column D).",
      ),
      rule(
        "before-brew-day",
        'IF(ISNUMBER(brewed_on),COUNTIFS(reading_times,">0",reading_times,"<"&INT(brewed_on))>0,FALSE)',
        "A reading is dated before the brew day: is a date mistyped?",
      ),
      rule(
        "out-of-order",
        `SUMPRODUCT(ISNUMBER(A${first}:A${last - 1})*ISNUMBER(A${first + 1}:A${last})*(A${first + 1}:A${last}<A${first}:A${last - 1}))>0`,
        "A reading is dated before the one above it: is a date mistyped?",
        "The latest date counts as the newest reading.",
      ),
      rule(
        "same-moment",
        // Half a minute: what the pane and the file readers tell apart is a minute.
        `SUMPRODUCT(ISNUMBER(A${first}:A${last - 1})*ISNUMBER(A${first + 1}:A${last})*(A${first + 1}:A${last}-A${first}:A${last - 1}<1/2880))>0`,
        "Two readings at one moment: is a time mistyped, or a reading there twice?",
        "Clear the one that is wrong.",
      ),
      rule(
        "uncorrected",
        anyError("gravities"),
        "A reading cannot be corrected:",
        `"look at its temperature. Columns F to H must hold nothing of your own (F${first} says why)."`,
      ),
      rule(
        "verdict-error",
        "ISERROR(verdict)",
        "Where it stands cannot be calculated:",
        "correct the original gravity first, or the apparent attenuation.",
      ),
      // Without a reading a plan that shows an error is told by the line of the malt, not here.
      silent("none", "COUNT(readings)=0"),
      rule(
        "rising",
        'verdict="rising"',
        '"Gravity rose between two readings, which beer cannot do:"',
        "check scale, temperature and date.",
      ),
      rule("above-original", 'AND(fg<>"",N(fg)>N(og))', "Gravity now is above the original gravity: one of the two is wrong."),
      rule(
        "attenuation-error",
        anyError(`G${first}:H${last}`),
        "Attenuation and alcohol cannot be calculated:",
        "clear what is yours in columns G and H; look at the original gravity.",
      ),
    ],
  };
}
