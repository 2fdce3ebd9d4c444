import { beerBelow, countedAtMost, creeping, denseLog, fallDeviations, lastDays, nearAbove, parts, realFall, restShare, risen, shareKept, slowFallPerDay, stalledAbove, stillFermenting } from "../../../core/log/steady";
import { num } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm, type PlainForm, type ValueOnly } from "./plain-form";

/** Fits, draws and timetables: what no single formula does. */
const fitted: ValueOnly = { value: "it fits a curve through the readings" };

/**
 * The rule of `core/log/steady.ts` in MAXIFS, MINIFS and AVERAGEIFS, so that the verdict follows the readings: one that
 * stood still could say "steady" of a beer that is not. Among days since pitching, a reading without a time is passed
 * over, where the call counts it as day 0.
 */
function verdict(x: PlainArguments): string {
  const [t, g, tolerance] = [x.range("times").all, x.range("gravities").all, x.core("tolerance")];
  const read = `${g},">0"`;
  // Beside dates, a time of 0 is an empty cell.
  const all = `${read},${t},">"&IF(MAX(${t})>1000,0,-1)`;
  // What is not filled in is nought to N, as to the call.
  const asked = (key: string): string | undefined => (x.given(key) === false ? undefined : x.given(key) === true ? x.core(key) : `N(${x.core(key)})`);
  const from = asked("countFrom");
  const counted = from === undefined ? all : `${read},${t},">="&MAX(IF(MAX(${t})>1000,1E-9,0),${from}-1E-9)`;
  const newestTime = `MAXIFS(${t},${read})`;
  const newest = `MINIFS(${g},${read},${t},${newestTime})`;
  /** Those younger than so many days; of them, too, only what counts. */
  const within = (days: string): string => `${read},${t},">="&${from === undefined ? `(${newestTime}-${days})` : `MAX(${newestTime}-${days},${from}-1E-9)`}`;
  const until = (days: string): string => `${t},"<="&(${newestTime}-${days})`;

  const level = `AVERAGEIFS(${g},${within("23/24+1E-9")})`;
  const near = `${g},"<="&(${newest}+${num(stillFermenting)}+1E-9)`;
  const older = `${within(`${num(lastDays.days)}-1E-9`)},${until(`${num(parts.olderThan)}+1E-9`)},${near}`;
  const newer = `${within(`${num(parts.newerThan)}-1E-9`)},${near}`;
  const recent = `COUNTIFS(${within(`${num(lastDays.days)}-1E-9`)},${near})`;
  const dense = `COUNTIFS(${within("25/24-1E-9")})>=${num(denseLog.readings)}`;

  const dayBefore = "23/24+1E-9";
  const lone = `COUNTIFS(${counted},${until(dayBefore)})=0`;
  // There is one, where these are asked: the newest of them counts.
  const referenceTime = `MAXIFS(${t},${read},${until(dayBefore)})`;
  const reference = `MINIFS(${g},${read},${t},${referenceTime})`;
  const lastDay = `${read},${t},">="&(${referenceTime})`;
  const perDay = `(${reference}-${newest})/(${newestTime}-${referenceTime})`;

  const rising =
    `IF(${dense},IFERROR(AVERAGEIFS(${g},${newer})-AVERAGEIFS(${g},${older})>${num(risen.many)}*${tolerance}+1E-9,FALSE),` +
    `${newest}-MINIFS(${g},${counted})>IF(${recent}>=${num(lastDays.readings)},${num(risen.many)},${num(risen.few)})*${tolerance}+1E-9)`;
  const deviation = `${tolerance}*IF(${dense},1,3^-0.5)*(${num(lastDays.readings)}/MIN(${num(countedAtMost)},${recent}))^0.5`;
  const rests = `IFERROR(AVERAGEIFS(${g},${older})-AVERAGEIFS(${g},${newer})+${num(fallDeviations)}*${deviation}<=${num(restShare)}*${tolerance}*(AVERAGEIFS(${t},${newer})-AVERAGEIFS(${t},${older}))+1E-9,FALSE)`;
  const lost = `MAXIFS(${g},${within(`${num(creeping.days)}-1E-9`)},${near})-${newest}`;
  const creeps = `AND(${lost}>${tolerance}/1.5+1E-9,OR(AND(${recent}>=4,${lost}<=${num(creeping.to)}*${tolerance}+1E-9),AND(${recent}>=3,${reference}-${newest}>${tolerance}/3+1E-9)))`;
  const agree = `MAXIFS(${g},${lastDay})-MINIFS(${g},${lastDay})<=${tolerance}+1E-9`;
  const settled = `IF(${recent}>=${num(lastDays.readings)},${rests},IF(${agree},NOT(${creeps}),FALSE))`;

  const [original, end] = [asked("originalGravity"), asked("expected")];
  const upper = `MAX(${original === undefined ? "" : `${original},`}MAXIFS(${g},${all}))`;
  const fallen = `${upper}-${level}>=${num(realFall)}-1E-9`;
  const excess = `${level}-${end ?? ""}`;
  const ifExpected = (then: string, otherwise: string): string => (end === undefined ? otherwise : x.given("expected") === true ? then : `IF(${end}>0,${then},${otherwise})`);
  const likeBeer = x.given("originalGravity") === true ? "FALSE" : `${original === undefined ? "" : `IF(${original}>0,FALSE,`}${level}<=${num(beerBelow)}+1E-9${original === undefined ? "" : ")"}`;
  const begun = `OR(${fallen},${likeBeer},${ifExpected(`${excess}<=${num(stalledAbove)}+1E-9`, "FALSE")})`;
  const stalled = ifExpected(`${excess}>${num(stalledAbove)}+1E-9`, `AND(${fallen},${level}-1>${num(shareKept)}*(${upper}-1)+1E-9)`);
  const nearly = `AND(${perDay}<=${num(slowFallPerDay)}+1E-9,${ifExpected(`${excess}<=${num(nearAbove)}+1E-9`, "TRUE")})`;
  return (
    `IF(COUNTIFS(${all})=0,"",IF(${lone},"working",IF(${rising},"rising",CHOOSE(1+2*${begun}+${settled},` +
    `IF(${upper}-${level}<=${tolerance}+1E-9,"not begun","working"),"not begun",IF(${nearly},"nearly","working"),IF(${stalled},"stalled","steady")))))`
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
