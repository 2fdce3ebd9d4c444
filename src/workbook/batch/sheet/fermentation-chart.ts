import type { BatchBuilder } from "./fields";
import type { ChartPlan, ChartSeriesPlan } from "../../grid/plan/sheet-plan";
import type { UnitWords } from "../unit-words";

/** Hops that are in: those that are only planned leave the course up to them as it is. */
const sinceHops = 'IF(N(dry_hopped_on)=0,"",count_from)';

/** Rows of the readings table. */
interface Rows {
  readonly heading: number;
  readonly first: number;
  readonly last: number;
}

/** Points of the curve: steps of less than half a day over a fortnight. */
const points = 33;
/** The chart shows at least so many days, and so many beyond the last reading. */
export const leastDays = 10;
export const daysAhead = 2;

/** From Okabe and Ito's palette for any kind of colour blindness, with two dark greys; the looks differ as well, for a print without colour. */
const colors = { gravity: "#1D1B16", curve: "#0072B2", band: "#56636B", temperature: "#C24E00" };

/**
 * The figures that the chart beside the readings is drawn from, to the right of the timeline.
 *
 * Excel draws a text at height 0 and a row without a date in the year 1900, and an error in a cell frightens people. So
 * none of these cells is ever a text or an error: where a reading is missing, its row repeats the point above, and the
 * first point is what the yeast was given; where there is no curve yet, its first cell repeats that point and the
 * others are empty, which Excel passes over.
 */
export function chartFigures(b: BatchBuilder, words: UnitWords, rows: Rows): void {
  curve(b, rows);
  marks(b, words, rows);
  forecast(b, rows);
}

/** What the plan calls the chart, in every version. */
export const fermentationChartName = "Fermentation";

/** The chart itself: only beside readings, since without one it would be axes around nothing. */
export const fermentationChart = (words: UnitWords, rows: Rows): ChartPlan => ({
  name: fermentationChartName,
  title: "Gravity, day by day",
  horizontal: { format: "monthDay" },
  vertical: { format: "gravity" },
  // Chosen by the figures, it would draw one degree as a cliff.
  secondary: { format: "whole", title: `Beer ${words.temperature}`, span: words.units === "us" ? [30, 120] : [0, 50] },
  series: series(rows),
  from: `I${rows.heading}`,
  to: `I${rows.last}`,
});

function series({ first, last }: Rows): [ChartSeriesPlan, ...ChartSeriesPlan[]] {
  const column = (letters: string, to: number) => `${letters}${first}:${letters}${to}`;
  const end = first + points - 1;
  const curve = { across: column("W", end), look: "dashes", color: colors.band } as const;
  return [
    { name: "Gravity read", across: column("AA", last + 1), values: column("AC", last + 1), color: colors.gravity, look: "marks" },
    { ...curve, name: "Fitted curve", values: column("X", end), color: colors.curve, look: "line" },
    { ...curve, name: "95 % band", values: column("Y", end) },
    { ...curve, name: "Upper edge of the band", values: column("Z", end), unnamed: true },
    {
      name: "Temperature",
      across: column("AD", last + 1),
      values: column("AE", last + 1),
      color: colors.temperature,
      look: "dots with marks",
      onSecondary: true,
    },
  ];
}

/** W to Z: the days of the chart and the curve on each, with its band. */
function curve(b: BatchBuilder, { heading, first, last }: Rows): void {
  for (const [letters, text] of [
    ["W", "For the chart"],
    ["X", "Curve"],
    ["Y", "Low"],
    ["Z", "High"],
  ] as const)
    b.put(letters, text, { style: "workings" }, heading);
  const fitted = `=IF(COUNT(log_gravities)<2,AC${first},IFERROR(GYLE.LOG.CURVE(log_times,log_gravities,chart_days,og,fg_expected,${sinceHops}),AC${first}))`;
  for (let index = 0; index < points; index += 1) {
    b.put("W", `=chart_from+(chart_to-chart_from)*${index}/${points - 1}`, { style: "workings", format: "dateTime" }, first + index);
    for (const letters of ["X", "Y", "Z"]) {
      const top = letters === "X" && index === 0;
      b.put(
        letters,
        top ? fitted : "",
        { style: "workings", format: "gravity", ...(top && { spillsTo: `Z${first + points - 1}` }) },
        first + index,
      );
    }
  }
  b.name("chart_days", `W${first}:W${first + points - 1}`);
  b.name("curve", `X${first}:Z${first + points - 1}`);
  b.name("log_times", `AA${first}:AA${last + 1}`);
  b.name("log_gravities", `AB${first}:AB${last + 1}`);
}

/**
 * AA to AE: one row for what the yeast was given, then one for each reading and each temperature. The log for the fit
 * (AB) holds what was read and nothing else; an original gravity that is only planned is drawn, but not fitted.
 */
function marks(b: BatchBuilder, words: UnitWords, { heading, first, last }: Rows): void {
  const headings = [
    ["AA", "Read on"],
    ["AB", "Log"],
    ["AC", "Gravity"],
    ["AD", "Felt on"],
    ["AE", `Beer ${words.temperature}`],
  ] as const;
  for (const [letters, text] of headings) b.put(letters, text, { style: "workings" }, heading);
  const line = (row: number, contents: readonly [string, string, string, string, string]) =>
    contents.forEach((content, index) =>
      b.put(
        headings[index]![0],
        `=${content}`,
        { style: "workings", format: (["dateTime", "gravity", "gravity", "dateTime", "whole"] as const)[index]! },
        row,
      ),
    );
  line(first, [
    "chart_from",
    'IF(ISNUMBER(og_reached),og,"")',
    "IF(ISNUMBER(og),og,1)",
    "chart_from",
    "IF(N(pitch_temperature)>0,pitch_temperature,MAX(beer_temperatures,ferment_from))",
  ]);
  for (let row = first; row <= last; row += 1) {
    const read = `AND(ISNUMBER(A${row}),ISNUMBER(F${row}))`;
    const felt = `AND(ISNUMBER(A${row}),ISNUMBER(E${row}))`;
    line(row + 1, [
      `IF(${read},A${row},AA${row})`,
      `IF(${read},F${row},"")`,
      `IF(${read},F${row},AC${row})`,
      `IF(${felt},A${row},AD${row})`,
      `IF(${felt},E${row},AE${row})`,
    ]);
  }
}

/** AG to AI: where the log says it is going, and the days that the chart covers. */
function forecast(b: BatchBuilder, { heading, first }: Rows): void {
  b.put("AG", "Forecast from the readings", { style: "workings" }, heading);
  b.put(
    "AG",
    `=IF(COUNT(log_gravities)<2,"",IFERROR(GYLE.LOG.FORECAST(log_times,log_gravities,og,fg_expected,${sinceHops}),""))`,
    { style: "workings", spillsTo: `AI${first + 5}` },
    first,
  );
  b.name("forecast", `AG${first}:AI${first + 5}`);
  b.name("forecast_day", `AH${first + 2}`);
  b.name("forecast_spread", `AI${first + 2}`);
  const from = first + 7;
  b.put("AG", "The chart begins", { style: "workings" }, from);
  b.put(
    "AH",
    "=IF(ISNUMBER(pitched_at),pitched_at,IF(N(brewed_on)>0,brewed_on+N(start_time),IF(COUNT(reading_times)=0,0,MIN(reading_times))))",
    { style: "workings", format: "dateTime", name: "chart_from" },
    from,
  );
  b.put("AG", "and ends", { style: "workings" }, from + 1);
  b.put(
    "AH",
    `=MAX(chart_from+${leastDays},MAX(reading_times)+${daysAhead})`,
    { style: "workings", format: "dateTime", name: "chart_to" },
    from + 1,
  );
}
