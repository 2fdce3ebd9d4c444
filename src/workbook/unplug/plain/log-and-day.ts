import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm, type PlainForm, type ValueOnly } from "./plain-form";

/** Fits, draws and timetables: what no single formula does. */
const fitted: ValueOnly = { value: "it fits a curve through the readings" };

/**
 * The rule of `core/log/steady.ts` in a handful of MAXIFS and MINIFS, so that the verdict follows the readings: one that
 * stood still could say "steady" of a beer that is not. Among days since pitching, a reading without a time is passed
 * over, where the call counts it as day 0.
 */
function verdict(x: PlainArguments): string {
  const [t, g, tolerance] = [x.range("times").all, x.range("gravities").all, x.core("tolerance")];
  // Beside dates, a time of 0 is an empty cell.
  const timed = `${g},">0",${t},">"&IF(MAX(${t})>1000,0,-1)`;
  const newestTime = `MAXIFS(${t},${timed})`;
  const newest = `MINIFS(${g},${timed},${t},${newestTime})`;
  const dayBefore = `${newestTime}-23/24+1E-9`;
  const until = `${t},"<="&(${dayBefore})`;
  const referenceTime = `MAXIFS(${t},${timed},${until})`;
  const reference = `MINIFS(${g},${timed},${t},${referenceTime})`;
  const since = `${timed},${t},">"&(${dayBefore})`;
  const spread = `MAX(${reference},MAXIFS(${g},${since}))-MIN(${reference},MINIFS(${g},${since}))`;
  const given = x.given("expected");
  const tooHigh = `${newest}-${x.core("expected")}>0.004+1E-9`;
  const earlier = `MAXIFS(${g},${timed},${t},"<="&(${newestTime}-47/24+1E-9),${t},">="&(${newestTime}-4-1E-9))`;
  const creeps = `AND(${reference}-${newest}>${tolerance}/4+1E-9,${earlier}-${newest}>${tolerance}+1E-9)`;
  const settled = `IF(${creeps},"nearly","steady")`;
  const steady = given === false ? settled : `IF(${given === true ? tooHigh : `AND(${given},${tooHigh})`},"stalled",${settled})`;
  return (
    `IF(COUNTIFS(${timed})=0,"",IF(${newest}-MINIFS(${g},${timed})>2*${tolerance}+1E-9,"rising",IF(COUNTIFS(${timed},${until})=0,"working",` +
    `IF(${spread}<=${tolerance}+1E-9,${steady},IF((${reference}-${newest})/(${newestTime}-${referenceTime})<=0.002+1E-9,"nearly","working")))))`
  );
}

export const logForms = {
  "LOG.STEADY": {
    holds: (x) => {
      const [times, gravities] = [x.range("times"), x.range("gravities")];
      if (times.rows !== gravities.rows || times.columns !== gravities.columns || times.heading !== gravities.heading) throw new NoPlainForm("times and gravities do not stand side by side");
      return [];
    },
    sum: verdict,
  },
  "LOG.FORECAST": fitted,
  "LOG.CURVE": fitted,
} satisfies Record<string, PlainForm | ValueOnly>;

export const dayForms = {
  "DAY.TIMELINE": { value: "it sorts steps and hops into one timetable, in words" },
} satisfies Record<string, ValueOnly>;

export const gaugeForms = {
  "GAUGE.SPREAD": { value: "it asks another function again and again" },
} satisfies Record<string, ValueOnly>;
