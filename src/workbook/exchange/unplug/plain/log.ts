import {
  almostADay,
  beerBelow,
  countedAtMost,
  creeping,
  denseLog,
  fallDeviations,
  lastDays,
  nearAbove,
  parts,
  realFall,
  restShare,
  risen,
  shareKept,
  slowFallPerDay,
  stalledAbove,
  stillFermenting,
} from "../../../../core/log/steady";
import { num } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm } from "./no-plain-form";
import type { PlainForm, ValueOnly } from "./plain-form";

/** What no plain formula does. */
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
  const asked = (key: string): string | undefined =>
    x.given(key) === false ? undefined : x.given(key) === true ? x.core(key) : `N(${x.core(key)})`;
  const from = asked("countFrom");
  const newestTime = `MAXIFS(${t},${read})`;
  const newest = `MINIFS(${g},${read},${t},${newestTime})`;
  const until = (days: string): string => `${t},"<="&(${newestTime}-${days})`;
  /** In hours, so that the formula says what it means. */
  const dayLess = `${num(24 * almostADay)}/24`;
  const dayBefore = `${dayLess}+1E-9`;
  const referenceTime = `MAXIFS(${t},${read},${until(dayBefore)})`;
  const reference = `MINIFS(${g},${read},${t},${referenceTime})`;
  const lastDay = `${read},${t},">="&(${referenceTime})`;
  const near = `${g},"<="&(${newest}+${num(stillFermenting)}+1E-9)`;
  const agree = `MAXIFS(${g},${lastDay})-MINIFS(${g},${lastDay})<=${tolerance}+1E-9`;

  const within = (days: string): string => `${read},${t},">="&(${newestTime}-${days})`;
  const older = `${within(`${num(lastDays.days)}-1E-9`)},${until(`${num(parts.olderThan)}+1E-9`)},${near}`;
  const newer = `${within(`${num(parts.newerThan)}-1E-9`)},${near}`;
  const recent = `COUNTIFS(${within(`${num(lastDays.days)}-1E-9`)},${near})`;
  const dense = `COUNTIFS(${within(`${num(24 * denseLog.days)}/24-1E-9`)})>=${num(denseLog.readings)}`;
  const deviation = `${tolerance}*IF(${dense},1,3^-0.5)*(${num(lastDays.readings)}/MIN(${num(countedAtMost)},${recent}))^0.5`;
  const rests = `IFERROR(AVERAGEIFS(${g},${older})-AVERAGEIFS(${g},${newer})+${num(fallDeviations)}*${deviation}<=${num(restShare)}*${tolerance}*(AVERAGEIFS(${t},${newer})-AVERAGEIFS(${t},${older}))+1E-9,FALSE)`;
  const lost = `MAXIFS(${g},${within(`${num(creeping.days)}-1E-9`)},${near})-${newest}`;
  const creeps = `AND(${lost}>${tolerance}/${num(1 / creeping.from)}+1E-9,OR(AND(${recent}>=${num(creeping.slowlyOf)},${lost}<=${num(creeping.to)}*${tolerance}+1E-9),AND(${recent}>=${num(creeping.latelyOf)},${reference}-${newest}>${tolerance}/${num(1 / creeping.lately)}+1E-9)))`;
  const settled = `IF(${recent}>=${num(lastDays.readings)},${rests},IF(${agree},NOT(${creeps}),FALSE))`;
  const level = `AVERAGEIFS(${g},${within(dayBefore)})`;
  const lone = `COUNTIFS(${all},${until(dayBefore)})=0`;
  const perDay = `(${reference}-${newest})/(${newestTime}-${referenceTime})`;
  const rising =
    `IF(${dense},IFERROR(AVERAGEIFS(${g},${newer})-AVERAGEIFS(${g},${older})>${num(risen.many)}*${tolerance}+1E-9,FALSE),` +
    `${newest}-MINIFS(${g},${all})>IF(${recent}>=${num(lastDays.readings)},${num(risen.many)},${num(risen.few)})*${tolerance}+1E-9)`;

  const [original, end] = [asked("originalGravity"), asked("expected")];
  const upper = `MAX(${original === undefined ? "" : `${original},`}MAXIFS(${g},${all}))`;
  const fallen = `${upper}-${level}>=${num(realFall)}-1E-9`;
  const excess = `${level}-${end ?? ""}`;
  const ifExpected = (then: string, otherwise: string): string =>
    end === undefined ? otherwise : x.given("expected") === true ? then : `IF(${end}>0,${then},${otherwise})`;
  const likeBeer =
    x.given("originalGravity") === true
      ? "FALSE"
      : `${original === undefined ? "" : `IF(${original}>0,FALSE,`}${level}<=${num(beerBelow)}+1E-9${original === undefined ? "" : ")"}`;
  const begun = `OR(${fallen},${likeBeer},${ifExpected(`${excess}<=${num(stalledAbove)}+1E-9`, "FALSE")})`;
  const stalled = ifExpected(`${excess}>${num(stalledAbove)}+1E-9`, `AND(${fallen},${level}-1>${num(shareKept)}*(${upper}-1)+1E-9)`);
  const nearly = `AND(${perDay}<=${num(slowFallPerDay)}+1E-9,${ifExpected(`${excess}<=${num(nearAbove)}+1E-9`, "TRUE")})`;
  const slowly = `IF(${nearly},5,4)`;
  const words = '"rising","not begun","stalled","working","nearly","steady"';
  /** The place of the word among them. */
  const place = (steady: string): string =>
    `IF(${rising},1,CHOOSE(1+2*${begun}+${settled},IF(${upper}-${level}<=${tolerance}+1E-9,2,4),2,${slowly},IF(${stalled},3,${steady})))`;
  // After something that can wake the beer up: two that count, and that agree.
  const tooFew = (added: string): string =>
    `IF(${added}>0,COUNTIFS(${read},${t},">="&(${added}+${dayLess}-1E-9),${until(`IF(${dense},${num(parts.olderThan)},${dayLess})+1E-9`)})=0,FALSE)`;
  const word =
    from === undefined
      ? `CHOOSE(${place("6")},${words})`
      : `CHOOSE(${place(`IF(OR(${from}=0,${dense},${agree}),6,5)`)}+6*${tooFew(from)},${words},"rising","not begun","stalled","working","working","working")`;
  return `IF(COUNTIFS(${all})=0,"",IF(${lone},"working",${word}))`;
}

export const logForms = {
  "LOG.STEADY": {
    holds: (x) => {
      const [times, gravities] = [x.range("times"), x.range("gravities")];
      if (times.rows !== gravities.rows || times.columns !== gravities.columns || times.heading !== gravities.heading)
        throw new NoPlainForm("times and gravities do not stand side by side");
      return [];
    },
    sum: verdict,
  },
  "LOG.FORECAST": fitted,
  "LOG.CURVE": fitted,
} satisfies Record<string, PlainForm | ValueOnly>;
